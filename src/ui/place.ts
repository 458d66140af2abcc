/** Where in the program one is; kept in the address after `#`, so that the browser's back works. */
export type Place =
  | { readonly desk: 'scout'; readonly sheet: 'track' }
  | { readonly desk: 'scout'; readonly sheet: 'obstacles'; readonly obstacleId: string | null }
  | { readonly desk: 'scout'; readonly sheet: 'convoy'; readonly vehicleId: string | null }
  | {
      readonly desk: 'brief';
      readonly cell: { readonly obstacleId: string; readonly vehicleId: string } | null;
    }
  | {
      readonly desk: 'workbench';
      readonly obstacleId: string;
      /** Null: the first vehicle, the main line. */
      readonly vehicleId: string | null;
      readonly lineId: string | null;
    }
  | { readonly desk: 'archive'; readonly part: 'trips' }
  | { readonly desk: 'archive'; readonly part: 'agreement' }
  | {
      readonly desk: 'archive';
      readonly part: 'tracks';
      readonly trackId: string | null;
      /** One of its obstacles; null for the track as a whole. */
      readonly obstacleId: string | null;
    }
  | {
      readonly desk: 'archive';
      readonly part: 'published';
      /** A track of the published archive that is being read, and one of its obstacles. */
      readonly trackId: string | null;
      readonly obstacleId: string | null;
    }
  /** What each vehicle really did, on the day. */
  | { readonly desk: 'outcomes'; readonly obstacleId: string | null };

export type Desk = Place['desk'];

export const SCOUT: Place = { desk: 'scout', sheet: 'obstacles', obstacleId: null };
export const TRACK: Place = { desk: 'scout', sheet: 'track' };
export const CONVOY: Place = { desk: 'scout', sheet: 'convoy', vehicleId: null };
export const BRIEF: Place = { desk: 'brief', cell: null };
export const ARCHIVE: Place = { desk: 'archive', part: 'trips' };
export const GRADED_TRACKS: Place = { desk: 'archive', part: 'tracks', trackId: null, obstacleId: null };
export const PUBLISHED: Place = { desk: 'archive', part: 'published', trackId: null, obstacleId: null };
export const AGREEMENT: Place = { desk: 'archive', part: 'agreement' };

export function addressOf(place: Place): string {
  return '#/' + partsOf(place).map(encodeURIComponent).join('/');
}

function partsOf(place: Place): string[] {
  if (place.desk === 'archive') {
    if (place.part === 'trips') return ['archive'];
    if (place.part === 'agreement') return ['archive', 'agreement'];
    return ['archive', place.part, place.trackId, place.obstacleId].filter((part) => part !== null);
  }
  if (place.desk === 'outcomes')
    return place.obstacleId === null ? ['outcomes'] : ['outcomes', place.obstacleId];
  if (place.desk === 'brief')
    return place.cell === null ? ['brief'] : ['brief', place.cell.obstacleId, place.cell.vehicleId];
  if (place.desk === 'workbench')
    return ['workbench', place.obstacleId, place.vehicleId ?? '', place.lineId ?? ''];
  switch (place.sheet) {
    case 'track':
      return ['scout', 'track'];
    case 'obstacles':
      return place.obstacleId === null ? ['scout', 'obstacles'] : ['scout', 'obstacles', place.obstacleId];
    case 'convoy':
      return place.vehicleId === null ? ['scout', 'convoy'] : ['scout', 'convoy', place.vehicleId];
  }
}

/** The place that an address names; an address that names none is the Scout desk. */
export function placeOf(address: string): Place {
  const [desk, first, second, third] = address
    .replace(/^#?\/?/, '')
    .split('/')
    .map(decoded);
  if (desk === 'archive' && (first === 'tracks' || first === 'published'))
    return { desk, part: first, trackId: second || null, obstacleId: (second && third) || null };
  if (desk === 'archive') return first === 'agreement' ? AGREEMENT : ARCHIVE;
  if (desk === 'outcomes') return { desk, obstacleId: first || null };
  if (desk === 'brief')
    return { desk: 'brief', cell: first && second ? { obstacleId: first, vehicleId: second } : null };
  if (desk === 'workbench' && first)
    return { desk, obstacleId: first, vehicleId: second || null, lineId: third || null };
  if (desk !== 'scout') return SCOUT;
  if (first === 'track') return TRACK;
  if (first === 'convoy') return { desk: 'scout', sheet: 'convoy', vehicleId: second || null };
  return { desk: 'scout', sheet: 'obstacles', obstacleId: second || null };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}
