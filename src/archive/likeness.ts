import { stepM } from '../route/ellipsoid.ts';
import { nearestOn } from '../route/station.ts';
import type { Track } from '../route/track.ts';
import type { GradedTrack } from './gradedTrack.ts';
import type { Box, TrackRow } from './trackRow.ts';
import type { Trip } from './trip.ts';

/** How a trip is like a graded track that it may belong to. */
export interface Likeness {
  /** Part of the trip's track that runs along the graded one, 0 to 1. */
  readonly alongShare: number;
  /** Whether a word of its name is in the other's. */
  readonly likeName: boolean;
}

/** Two recordings of one way stay within this of each other, metres: each receiver is off by some ten. Common practice, no source. */
const BESIDE_M = 25;
/** Places along the trip that are looked at. */
const LOOKED_AT = 160;
/** Least part of the way from which a trip is taken to belong to a track. */
const BELONGS = 0.3;
/** Degrees that a trip's box is widened by when looking for tracks near it: about 2 km. */
const NEAR_DEGREES = 0.02;
/** Words that say nothing of which track it is are short. */
const LEAST_WORD = 4;

export function likenessOf(trip: Trip, graded: GradedTrack): Likeness {
  return { alongShare: alongShare(trip.track, graded.track), likeName: likeName(trip.name, graded.name) };
}

/** Whether it is worth proposing; the way counts more than the name. */
export function belongs({ alongShare, likeName }: Likeness): boolean {
  return alongShare >= BELONGS || likeName;
}

function alongShare(mine: Track | null, other: Track | null): number {
  if (mine === null || other === null || mine.length === 0 || other.length === 0) return 0;
  const count = Math.min(LOOKED_AT, mine.length);
  let beside = 0;
  for (let k = 0; k < count; k++) {
    const i = Math.floor(((k + 0.5) / count) * mine.length);
    const { lng, lat } = nearestOn(other, mine.lng[i], mine.lat[i]);
    if (stepM(mine.lng[i], mine.lat[i], lng, lat) <= BESIDE_M) beside++;
  }
  return beside / count;
}

function likeName(mine: string, other: string): boolean {
  const wordsOf = (name: string) => name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const theirs = new Set(wordsOf(other));
  return wordsOf(mine).some((word) => word.length >= LEAST_WORD && theirs.has(word));
}

/** Where to look for tracks that a trip may belong to; null where the trip lies nowhere. */
export function boxAround({ track, obstacles }: Trip): Box | null {
  const lng = track ? track.lng : Float64Array.from(obstacles, (one) => one.lng);
  const lat = track ? track.lat : Float64Array.from(obstacles, (one) => one.lat);
  if (lng.length === 0) return null;
  let [west, south, east, north] = [lng[0], lat[0], lng[0], lat[0]];
  for (let i = 1; i < lng.length; i++) {
    west = Math.min(west, lng[i]);
    east = Math.max(east, lng[i]);
    south = Math.min(south, lat[i]);
    north = Math.max(north, lat[i]);
  }
  return [west - NEAR_DEGREES, south - NEAR_DEGREES, east + NEAR_DEGREES, north + NEAR_DEGREES];
}

/** The least box around all of some; null where none of them lies anywhere. */
export function boxOfAll(rows: readonly Pick<TrackRow, 'box'>[]): Box | null {
  return rows.reduce<Box | null>((all, { box }) => {
    if (box === null || all === null) return all ?? box;
    return [
      Math.min(all[0], box[0]),
      Math.min(all[1], box[1]),
      Math.max(all[2], box[2]),
      Math.max(all[3], box[3]),
    ];
  }, null);
}
