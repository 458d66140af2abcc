import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { TrackRow } from '../archive/trackRow.ts';
import type { Sketched } from '../map/sketched.ts';
import type { Path } from '../route/geo.ts';
import { simplified } from '../route/geo.ts';
import { spansOf } from '../route/station.ts';
import { takeTracksBare } from '../workers/archive.ts';

/** Tracks that are drawn as lines at most; the others are points. */
export const DRAWN = 200;
/** Tracks that are fetched at a time, and fetches after which the map is drawn anew. */
const AT_ONCE = 10;
const SHOWN_EVERY = 5;
/** What is drawn stays within this of what was recorded, metres. */
const WITHIN_M = 12;

interface Kept {
  readonly updatedMs: number;
  readonly ways: readonly Path[];
}

/** The lines of graded tracks for a small map, fetched as they are wanted. */
class Sketches {
  #kept = $state.raw<ReadonlyMap<string, Kept>>(new Map());
  #asked = 0;

  /** What there is to draw of some rows now. */
  of(rows: readonly TrackRow[]): Sketched[] {
    return rows.flatMap(({ id, name, box, updatedMs }) => {
      if (box === null) return [];
      const kept = this.#kept.get(id);
      const ways = kept?.updatedMs === updatedMs && kept.ways.length > 0 ? kept.ways : null;
      const middle = ways?.[0];
      const half = middle ? Math.floor(middle.lng.length / 2) : 0;
      const lng = middle ? middle.lng[half] : (box[0] + box[2]) / 2;
      const lat = middle ? middle.lat[half] : (box[1] + box[3]) / 2;
      return [{ id, name, lng, lat, ways }];
    });
  }

  /** Fetches the lines of the first of some rows that are not here yet; a later call takes over. */
  async fetch(rows: readonly TrackRow[]): Promise<void> {
    const asked = ++this.#asked;
    const missing = rows
      .slice(0, DRAWN)
      .filter(({ id, updatedMs, lengthM }) => lengthM > 0 && this.#kept.get(id)?.updatedMs !== updatedMs);
    const come: [string, Kept][] = [];
    for (let i = 0; i < missing.length && asked === this.#asked; i += AT_ONCE) {
      const some = missing.slice(i, i + AT_ONCE);
      const { value } = await takeTracksBare(some.map(({ id }) => id));
      for (const { id, updatedMs } of some) {
        const track = value?.find((one) => one.id === id);
        come.push([id, { updatedMs, ways: track ? waysOf(track) : [] }]);
      }
      const isLast = i + AT_ONCE >= missing.length;
      if (isLast || (i / AT_ONCE) % SHOWN_EVERY === SHOWN_EVERY - 1)
        this.#kept = new Map([...this.#kept, ...come]);
    }
  }
}

/** What there is to draw of a track on a small map. */
export function waysOf({ track }: GradedTrack): Path[] {
  if (track === null) return [];
  return spansOf(track)
    .filter(({ from, to }) => to - from > 1)
    .map(({ from, to }) =>
      simplified({ lng: track.lng.subarray(from, to), lat: track.lat.subarray(from, to) }, WITHIN_M),
    );
}

export const sketches = new Sketches();
