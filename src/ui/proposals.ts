import type { Likeness } from '../archive/likeness.ts';
import { belongs, boxAround, likenessOf } from '../archive/likeness.ts';
import type { TrackRow } from '../archive/trackRow.ts';
import type { Trip } from '../archive/trip.ts';
import { shown } from '../units.ts';
import { say } from '../words/words.ts';
import { findTracks, takeTracksBare } from '../workers/archive.ts';

/** A graded track that a trip may belong to; likeness is null where it was not looked at. */
export interface Proposal {
  readonly row: TrackRow;
  readonly likeness: Likeness | null;
}

/** Tracks near a trip that are looked at one by one. */
const LOOKED_AT = 12;

/** The graded tracks that a trip may belong to, the likeliest first, and after them all others by name. */
export async function proposalsFor(trip: Trip): Promise<Proposal[]> {
  const { value: rows } = await findTracks();
  const box = boxAround(trip);
  const near = box === null ? [] : ((await findTracks({ box })).value ?? []);
  const looked = near.slice(0, LOOKED_AT);
  const { value: tracks } = await takeTracksBare(looked.map(({ id }) => id));
  const likely = (tracks ?? [])
    .flatMap((track): Proposal[] => {
      const row = looked.find(({ id }) => id === track.id);
      const likeness = likenessOf(trip, track);
      return row && belongs(likeness) ? [{ row, likeness }] : [];
    })
    .sort((a, b) => (b.likeness?.alongShare ?? 0) - (a.likeness?.alongShare ?? 0));
  const others = (rows ?? []).filter(({ id }) => likely.every(({ row }) => row.id !== id));
  return [...likely, ...others.map((row) => ({ row, likeness: null }))];
}

/** Name and area, and why it is proposed. */
export function proposalText({ row, likeness }: Proposal): string {
  const words = say.gradedTracks.filing;
  const name = [row.name || say.gradedTracks.unnamed, row.area].filter(Boolean).join(', ');
  if (likeness === null) return name;
  const how =
    likeness.alongShare > 0
      ? words.sameGround(shown(likeness.alongShare, 'share', 'metric'))
      : words.nearName;
  return name + words.likely(how);
}
