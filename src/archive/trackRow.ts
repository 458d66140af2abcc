import type { GradedTrack } from './gradedTrack.ts';

/** [west, south, east, north], degrees. One that crosses the 180th meridian spans them all: found too often, never too seldom. */
export type Box = readonly [west: number, south: number, east: number, north: number];

/** What finding a graded track needs, read without the track itself. */
export interface TrackRow {
  readonly id: string;
  readonly name: string;
  readonly area: string;
  /** Around track, waypoints and obstacles; null where nothing has a place. */
  readonly box: Box | null;
  /** Of the track; 0 without one. */
  readonly lengthM: number;
  readonly obstacleCount: number;
  /** Its grades by whichever classifications were asked, as whoever worked them out wrote them; empty until then. */
  readonly levels: Levels;
  /** When any of its ground was last measured, milliseconds since 1970-01-01T00:00:00Z; null where never. */
  readonly lastVisitMs: number | null;
  /** Days of measuring, told apart by their moment. */
  readonly visitCount: number;
  readonly outcomeCount: number;
  /** Values that two people changed at once, over which someone must choose. */
  readonly conflictCount: number;
  /** When it last changed on this device; rises with every change. */
  readonly updatedMs: number;
}

export type Levels = Readonly<Record<string, string | number>>;

/** @param updatedMs see `TrackRow` */
export function trackRowOf(graded: GradedTrack, conflictCount: number, updatedMs: number): TrackRow {
  const { id, name, area, track, surveyed } = graded;
  const visits = new Set(surveyed.flatMap((one) => one.visits.map(({ atMs }) => atMs)));
  return {
    id,
    name,
    area,
    box: boxOf(graded),
    lengthM: track ? track.distanceM[track.length - 1] : 0,
    obstacleCount: surveyed.length,
    levels: {},
    lastVisitMs: visits.size > 0 ? [...visits].reduce((a, b) => Math.max(a, b)) : null,
    visitCount: visits.size,
    outcomeCount: surveyed.reduce((sum, { outcomes }) => sum + outcomes.length, 0),
    conflictCount,
    updatedMs,
  };
}

function boxOf({ track, waypoints, surveyed }: GradedTrack): Box | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (lng: number, lat: number) => {
    west = Math.min(west, lng);
    south = Math.min(south, lat);
    east = Math.max(east, lng);
    north = Math.max(north, lat);
  };
  for (let i = 0; track && i < track.length; i++) take(track.lng[i], track.lat[i]);
  waypoints.forEach(({ lng, lat }) => take(lng, lat));
  surveyed.forEach(({ obstacle }) => take(obstacle.lng, obstacle.lat));
  return west === Infinity ? null : [west, south, east, north];
}
