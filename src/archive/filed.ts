import type { Reading } from '../problem.ts';
import { Points } from '../route/points.ts';
import { READ_LIMITS } from '../route/limits.ts';
import type { Track } from '../route/track.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { GradedTrack, Surveyed } from './gradedTrack.ts';
import type { Trip } from './trip.ts';

/** What a file of many things was found to hold. */
export interface Filed {
  readonly tracks: readonly GradedTrack[];
  readonly trips: readonly Trip[];
}

/** Is given graded tracks, some at a time, as they are read; no more are read until it has answered. */
export type TakeTracks = (tracks: readonly GradedTrack[]) => void | Promise<void>;

/** What such a file was found to hold besides the tracks that were taken. */
export interface Taken {
  readonly trackCount: number;
  readonly trips: readonly Trip[];
}

/** Tracks that are read before they are taken: the more of them live together, the more memory the browser claims. */
export const TAKEN_AT_ONCE = 4;

/** Tracks as they are read, handed over some at a time. */
export class Handing {
  count = 0;
  readonly #take: TakeTracks;
  #tracks: GradedTrack[] = [];

  constructor(take: TakeTracks) {
    this.#take = take;
  }

  add(graded: GradedTrack): void {
    this.count++;
    this.#tracks.push(graded);
  }

  /** Hands over where there are enough; at the end whatever is left. */
  async over(isEnd = false): Promise<void> {
    if (this.#tracks.length < (isEnd ? 1 : TAKEN_AT_ONCE)) return;
    const tracks = this.#tracks;
    this.#tracks = [];
    await this.#take(tracks);
  }
}

/** All that a reading gives, together. */
export async function filedBy(read: (take: TakeTracks) => Promise<Reading<Taken>>): Promise<Reading<Filed>> {
  const tracks: GradedTrack[] = [];
  const { value, problems } = await read((some) => void tracks.push(...some));
  return { value: value && { tracks, trips: value.trips }, problems };
}

/** The obstacle on the ground of its newest visit. */
export function todays({ obstacle, visits }: Surveyed): Obstacle {
  return { ...obstacle, stretch: visits.at(-1)?.stretch ?? obstacle.stretch };
}

/** The track as it is today, as a trip with nobody in it yet. */
export function asTrip({ id, name, note, track, waypoints, surveyed }: GradedTrack): Trip {
  return {
    id,
    name,
    note,
    radioChannel: '',
    direction: 'as recorded',
    track,
    waypoints,
    obstacles: surveyed.map(todays),
    heldGrips: [],
    vehicles: [],
  };
}

/** A line of another program, a piece without a gap; the arrays are parallel, elevations NaN where unknown. */
export interface ForeignPath {
  readonly lng: Float64Array;
  readonly lat: Float64Array;
  readonly elevationM: Float64Array;
}

/**
 * A graded track made of somebody else's line, with nothing surveyed on it; null where fewer than two points of it can be
 * used. It is named for what it holds: to read the same line twice gives the same track.
 */
export function gradedOfPaths(
  name: string,
  note: string,
  paths: readonly ForeignPath[],
): { readonly graded: GradedTrack; readonly lost: number } | null {
  const points = new Points();
  let lost = 0;
  for (const { lng, lat, elevationM } of paths) {
    points.endSegment();
    for (let i = 0; i < lng.length; i++) {
      const placed = Math.abs(lng[i]) <= 180 && Math.abs(lat[i]) <= 90;
      if (!placed) lost++;
      const height = elevationM[i];
      const known = height >= READ_LIMITS.lowestM && height <= READ_LIMITS.highestM;
      if (placed) points.push(lng[i] === 180 ? -180 : lng[i], lat[i], known ? height : NaN, NaN);
    }
  }
  if (points.length < 2) return null;
  return { graded: gradedOfTrack(points.take('track', name, note)), lost };
}

/** The same of a recording. */
export function gradedOfTrack(track: Track, waypoints: GradedTrack['waypoints'] = []): GradedTrack {
  const { name, description } = track;
  return {
    id: `line-${hashOf(track)}`,
    name,
    area: '',
    note: description,
    track,
    waypoints,
    surveyed: [],
  };
}

/** 64 bits of FNV-1a (Fowler, Noll, Vo), as two of 32 that start apart, over the positions. */
function hashOf({ lng, lat, segmentStart }: Track): string {
  const each = [0x811c9dc5, 0x01000193].map((start) => {
    let hash = start;
    for (const column of [lng, lat, segmentStart])
      for (const byte of new Uint8Array(column.buffer, column.byteOffset, column.byteLength))
        hash = Math.imul(hash ^ byte, 0x01000193);
    return (hash >>> 0).toString(16).padStart(8, '0');
  });
  return each.join('');
}
