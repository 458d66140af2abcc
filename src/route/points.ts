import { stepM } from './ellipsoid.ts';
import type { Track } from './track.ts';

/** The points of one track while it is read: four columns that grow by doubling. */
export class Points {
  length = 0;
  #capacity = 1024;
  #lng = new Float64Array(this.#capacity);
  #lat = new Float64Array(this.#capacity);
  #elevationM = new Float64Array(this.#capacity);
  #timeS = new Float64Array(this.#capacity);
  #segmentStart: number[] = [];
  #segmentOpen = false;

  /** The next point begins a new segment. A segment that gets none leaves no trace. */
  endSegment(): void {
    this.#segmentOpen = false;
  }

  push(lng: number, lat: number, elevationM: number, timeS: number): void {
    if (this.length === this.#capacity) this.#grow();
    if (!this.#segmentOpen) {
      this.#segmentOpen = true;
      this.#segmentStart.push(this.length);
    }
    const i = this.length++;
    this.#lng[i] = lng;
    this.#lat[i] = lat;
    this.#elevationM[i] = elevationM;
    this.#timeS[i] = timeS;
  }

  /** Whether a point equals the last one of the segment in everything, unknown being equal to unknown. */
  repeatsLast(lng: number, lat: number, elevationM: number, timeS: number): boolean {
    const i = this.length - 1;
    return (
      this.#segmentOpen &&
      this.#lng[i] === lng &&
      this.#lat[i] === lat &&
      Object.is(this.#elevationM[i], elevationM) &&
      Object.is(this.#timeS[i], timeS)
    );
  }

  /** The points as a track of exact length; this becomes empty. */
  take(kind: Track['kind'], name: string, description: string): Track {
    const { length } = this;
    const lng = this.#lng.slice(0, length);
    const lat = this.#lat.slice(0, length);
    const segmentStart = Uint32Array.from(this.#segmentStart);
    const track = {
      name,
      description,
      kind,
      length,
      lng,
      lat,
      elevationM: this.#elevationM.slice(0, length),
      timeS: this.#timeS.slice(0, length),
      distanceM: cumulativeM(lng, lat, segmentStart),
      segmentStart,
    };
    this.length = 0;
    this.#segmentStart = [];
    this.#segmentOpen = false;
    return track;
  }

  #grow(): void {
    this.#capacity *= 2;
    this.#lng = grown(this.#lng, this.#capacity);
    this.#lat = grown(this.#lat, this.#capacity);
    this.#elevationM = grown(this.#elevationM, this.#capacity);
    this.#timeS = grown(this.#timeS, this.#capacity);
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

function grown(column: Float64Array<ArrayBuffer>, capacity: number): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(capacity);
  larger.set(column);
  return larger;
}
