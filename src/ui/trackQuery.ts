import { isStaleAt } from '../archive/ages.ts';
import { ARCHIVE_LIMITS } from '../archive/limits.ts';
import type { Box, TrackRow } from '../archive/trackRow.ts';
import type { Wanted } from '../archive/wanted.ts';
import type { ClassificationId } from '../grade/classification.ts';

export const SORTS = ['name', 'length', 'visited', 'changed', 'convoy'] as const;

export type Sort = (typeof SORTS)[number];

export const VISITED = ['any', 'within', 'stale'] as const;

export type Visited = (typeof VISITED)[number];

/** What someone asks of the list of graded tracks. */
export interface TrackQuery {
  readonly text: string;
  /** Of the classification that grades are told by; null for any. */
  readonly level: number | null;
  /** NaN where no end is set. */
  readonly leastM: number;
  readonly mostM: number;
  readonly visited: Visited;
  readonly inConflict: boolean;
  readonly inView: boolean;
  readonly sort: Sort;
}

export const EVERYTHING: TrackQuery = {
  text: '',
  level: null,
  leastM: NaN,
  mostM: NaN,
  visited: 'any',
  inConflict: false,
  inView: false,
  sort: 'name',
};

/** Whether anything is left out by it. */
export function isNarrow({ text, level, leastM, mostM, visited, inConflict, inView }: TrackQuery): boolean {
  const ends = [leastM, mostM].some((end) => !Number.isNaN(end));
  return text.trim() !== '' || level !== null || ends || visited !== 'any' || inConflict || inView;
}

const ORDERS = {
  name: 'name',
  length: 'longest',
  visited: 'visited',
  changed: 'newest',
  convoy: 'name',
} as const;

/** The same as the archive is asked; `view` is the frame of the map, null where there is none. */
export function wantedOf(
  query: TrackQuery,
  classification: ClassificationId,
  view: Box | null,
  nowMs: number,
): Wanted {
  const { text, level, leastM, mostM, visited, inConflict, inView, sort } = query;
  const hasEnds = !Number.isNaN(leastM) || !Number.isNaN(mostM);
  return {
    order: ORDERS[sort],
    ...(text.trim() === '' ? {} : { text }),
    ...(level === null ? {} : { levels: { [classification]: [level] } }),
    ...(hasEnds ? { lengthM: [or(leastM, 0), or(mostM, Infinity)] as const } : {}),
    ...(visited === 'within' ? { visitedSinceMs: nowMs - ARCHIVE_LIMITS.staleMs } : {}),
    ...(inConflict ? { inConflict } : {}),
    ...(inView && view !== null ? { box: view } : {}),
  };
}

function or(value: number, otherwise: number): number {
  return Number.isNaN(value) ? otherwise : value;
}

/** Whether nobody measured it lately: what the archive cannot be asked. */
export function isOld({ lastVisitMs }: TrackRow, nowMs: number): boolean {
  return lastVisitMs === null || isStaleAt(lastVisitMs, nowMs);
}
