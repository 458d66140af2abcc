import { stepM } from './ellipsoid.ts';
import type { Track } from './track.ts';

/** Points to a block. Columns grow block by block: doubling would leave as much again behind as garbage. */
const BLOCK = 16_384;

/** One number a point, growing. */
class Column {
  readonly #blocks = [new Float64Array(BLOCK)];
  #last = this.#blocks[0];

  set(index: number, value: number): void {
    const at = index % BLOCK;
    if (at === 0 && index > 0) this.#blocks.push((this.#last = new Float64Array(BLOCK)));
    this.#last[at] = value;
  }

  /** The value of the highest index that was set. */
  last(index: number): number {
    return this.#last[index % BLOCK];
  }

  /** The first `length` values; this can then be filled anew. */
  take(length: number): Float64Array {
    const whole = new Float64Array(length);
    for (let at = 0; at < length; at += BLOCK) {
      whole.set(this.#blocks[at / BLOCK].subarray(0, length - at), at);
    }
    this.#blocks.length = 1;
    this.#last = this.#blocks[0];
    return whole;
  }
}

/** The points of one track while it is read. */
export class Points {
  length = 0;
  readonly #lng = new Column();
  readonly #lat = new Column();
  readonly #elevationM = new Column();
  readonly #timeS = new Column();
  #segmentStart: number[] = [];
  #segmentOpen = false;

  /** The next point begins a new segment. A segment that gets none leaves no trace. */
  endSegment(): void {
    this.#segmentOpen = false;
  }

  push(lng: number, lat: number, elevationM: number, timeS: number): void {
    if (!this.#segmentOpen) {
      this.#segmentOpen = true;
      this.#segmentStart.push(this.length);
    }
    this.#lng.set(this.length, lng);
    this.#lat.set(this.length, lat);
    this.#elevationM.set(this.length, elevationM);
    this.#timeS.set(this.length, timeS);
    this.length++;
  }

  /** Whether a point equals the last one of the segment in everything, unknown being equal to unknown. */
  repeatsLast(lng: number, lat: number, elevationM: number, timeS: number): boolean {
    const i = this.length - 1;
    return (
      this.#segmentOpen &&
      this.#lng.last(i) === lng &&
      this.#lat.last(i) === lat &&
      Object.is(this.#elevationM.last(i), elevationM) &&
      Object.is(this.#timeS.last(i), timeS)
    );
  }

  /** The points as a track; this becomes empty. */
  take(kind: Track['kind'], name: string, description: string): Track {
    const { length } = this;
    const lng = this.#lng.take(length);
    const lat = this.#lat.take(length);
    const elevationM = this.#elevationM.take(length);
    const timeS = this.#timeS.take(length);
    const segmentStart = Uint32Array.from(this.#segmentStart);
    const distanceM = cumulativeM(lng, lat, segmentStart);
    this.length = 0;
    this.#segmentStart = [];
    this.#segmentOpen = false;
    const columns = { lng, lat, elevationM, timeS, distanceM, segmentStart };
    return { name, description, kind, length, ...columns, model: null };
  }
}

/** Distance from the first point at every point; the link over a gap, before each `segmentStart`, adds nothing. */
export function cumulativeM(lng: Float64Array, lat: Float64Array, segmentStart: Uint32Array): Float64Array {
  const distanceM = new Float64Array(lng.length);
  let next = 1;
  for (let i = 1; i < lng.length; i++) {
    const gap = segmentStart[next] === i;
    if (gap) next++;
    distanceM[i] = distanceM[i - 1] + (gap ? 0 : stepM(lng[i - 1], lat[i - 1], lng[i], lat[i]));
  }
  return distanceM;
}
