import { stepM, wrapLng } from '../route/ellipsoid.ts';
import type { BoxIndex } from './boxIndex.ts';
import type { Box, TrackRow } from './trackRow.ts';

type Place = readonly [lng: number, lat: number];

/** What someone looks for in the archive; whatever is absent is all one to them. */
export interface Wanted {
  /** Tracks whose box touches this one; west greater than east crosses the 180th meridian. */
  readonly box?: Box;
  /** Words that must all stand in name or area, whole or in part; capitals and accents are all one. */
  readonly text?: string;
  /** By classification, the levels that will do. */
  readonly levels?: Readonly<Record<string, readonly (string | number)[]>>;
  readonly lengthM?: readonly [least: number, most: number];
  /** Measured at that time or later, milliseconds since 1970-01-01T00:00:00Z. */
  readonly visitedSinceMs?: number;
  /** Only those over which someone must choose between two values. */
  readonly inConflict?: boolean;
  /** By name where it is absent. `newest`: changed last first; `visited`: measured last first. */
  readonly order?: 'name' | 'longest' | 'newest' | 'visited' | { readonly nearest: Place };
}

const NAMES = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

export function byName(one: TrackRow, other: TrackRow): number {
  return NAMES.compare(one.name, other.name) || (one.id < other.id ? -1 : 1);
}

/** The rows that fit, in the wanted order. They are given `byName`; `index` holds their boxes. */
export function found(rows: readonly TrackRow[], index: BoxIndex, wanted: Wanted): TrackRow[] {
  const { box, text, levels, lengthM, visitedSinceMs, inConflict } = wanted;
  const inBox = box ? index.touching(box) : null;
  const words = folded(text ?? '')
    .split(/\s+/)
    .filter(Boolean);
  const fits = rows.filter((row, i) => {
    if (inBox && !inBox.has(i)) return false;
    if (inConflict && row.conflictCount === 0) return false;
    if (lengthM && !(row.lengthM >= lengthM[0] && row.lengthM <= lengthM[1])) return false;
    if (visitedSinceMs !== undefined && !((row.lastVisitMs ?? -Infinity) >= visitedSinceMs)) return false;
    if (levels && !Object.entries(levels).every(([by, any]) => any.includes(row.levels[by]))) return false;
    if (words.length === 0) return true;
    const names = folded(`${row.name} ${row.area}`);
    return words.every((word) => names.includes(word));
  });
  return inOrder(fits, wanted.order ?? 'name');
}

/** Without capitals and without accents (Unicode, combining diacritical marks). */
function folded(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

/** What is alike stays by name. */
function inOrder(rows: TrackRow[], order: NonNullable<Wanted['order']>): TrackRow[] {
  const by = (value: (row: TrackRow) => number) => {
    const ranked = rows.map((row) => ({ row, value: value(row) }));
    return ranked.sort((a, b) => a.value - b.value).map(({ row }) => row);
  };
  if (typeof order === 'object') return by(({ box }) => distanceM(box, order.nearest));
  switch (order) {
    case 'name':
      return rows;
    case 'longest':
      return by(({ lengthM }) => -lengthM);
    case 'newest':
      return by(({ updatedMs }) => -updatedMs);
    case 'visited':
      return by(({ lastVisitMs }) => (lastVisitMs === null ? Number.MAX_VALUE : -lastVisitMs));
  }
}

/** From a place to the nearest point of a box; farther than anything where there is no box. */
function distanceM(box: Box | null, [lng, lat]: Place): number {
  if (box === null) return Number.MAX_VALUE;
  const [west, south, east, north] = box;
  const off = wrapLng(lng - (west + east) / 2);
  const half = (east - west) / 2;
  const beside = Math.sign(off) * Math.max(0, Math.abs(off) - half);
  return stepM(0, lat, beside, Math.min(north, Math.max(south, lat)));
}
