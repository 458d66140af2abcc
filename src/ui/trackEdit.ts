import type { Trip } from '../archive/trip.ts';
import type { Steepest } from '../route/climb.ts';
import { climbOf, STEEPEST_OVER_M, steepestOf } from '../route/climb.ts';
import { nearestOn, pointAt } from '../route/station.ts';
import type { SlopeProfile } from '../route/slope.ts';
import type { Track, Waypoint } from '../route/track.ts';
import type { System } from '../units.ts';
import { counted, round, shown, slopeText } from '../units.ts';
import { say } from '../words/words.ts';
import type { Pin } from './obstacleEdit.ts';
import { pinOnward } from './obstacleEdit.ts';

/** The trip on another track. Its obstacles stay where they are on the ground; their stations are read off the new track. */
export function withTrack(trip: Trip, track: Track, waypoints: readonly Waypoint[]): Trip {
  const obstacles = trip.obstacles
    .map((obstacle) => ({ ...obstacle, stationM: nearestOn(track, obstacle.lng, obstacle.lat).stationM }))
    .toSorted((a, b) => a.stationM - b.stationM);
  const name = trip.name === say.track.newTrip && track.name !== '' ? track.name : trip.name;
  return { ...trip, name, track, waypoints, obstacles };
}

/** A pin at the place of the track nearest to where someone pointed or stands; how far off that was, sideways. */
export function pinNear(track: Track, lng: number, lat: number): { pin: Pin; offM: number } {
  const foot = nearestOn(track, lng, lat);
  return {
    pin: { lng: foot.lng, lat: foot.lat, stationM: foot.stationM },
    offM: Math.abs(foot.acrossM),
  };
}

/** As `pinNear` where the trip has a track; else the very place, the next in the order of pinning. */
export function pinFor({ track, obstacles }: Trip, lng: number, lat: number): Pin {
  return track === null ? pinOnward(obstacles, lng, lat) : pinNear(track, lng, lat).pin;
}

export function pinAt(track: Track, stationM: number): Pin {
  const { lng, lat } = pointAt(track, stationM);
  return { lng, lat, stationM };
}

/** Such as `Quarry ridge: 12.40 km, 3,120 points, 2 parts`. */
export function trackWords(track: Track, system: System): string {
  const parts = track.segmentStart.length;
  const length = shown(lengthOf(track), 'distance', system);
  const points = say.track.points(counted(track.length));
  return `${track.name || say.track.unnamedTrack}: ${length}, ${points}${parts > 1 ? say.track.partsWithGaps(parts) : ''}`;
}

export function lengthOf(track: Track): number {
  return track.length === 0 ? 0 : track.distanceM[track.length - 1];
}

/** Share of the points that carry an elevation. */
export function elevationShare(track: Track): number {
  let known = 0;
  for (const elevationM of track.elevationM) if (!Number.isNaN(elevationM)) known++;
  return track.length === 0 ? 0 : known / track.length;
}

/** What the track climbs in all, and where it is steepest, in the recorded direction: names and words for a table. */
export function climbRows(profile: SlopeProfile, system: System): [name: string, words: string][] {
  const { ascentM, descentM } = climbOf(profile);
  const height = (valueM: number) => round(valueM, 'length', system);
  const known = profile.segments.some((segment) => segment.known);
  return [
    [say.track.upAndDown, known ? say.track.climbed(height(ascentM), height(descentM)) : say.track.notKnown],
    ...STEEPEST_OVER_M.flatMap((overM): [string, string][] => {
      const { climb, descent } = steepestOf(profile, overM);
      const over = round(overM, 'length', system);
      return [
        [say.track.steepestUp(over), steepestText(climb, system)],
        [say.track.steepestDown(over), steepestText(descent, system)],
      ];
    }),
  ];
}

/** Such as `21.4° ± 3.6°, 39 %, 1 in 2.6, at 8.19 km`; up or down is said beside it. Lines break after commas only. */
function steepestText(steepest: Steepest | null, system: System): string {
  if (steepest === null) return say.track.noneKnown;
  const { slopeRad, plusMinusRad, fromM } = steepest;
  const [angle, ...others] = slopeText(Math.abs(slopeRad)).split(', ');
  const parts = [
    `${angle} ± ${shown(plusMinusRad, 'angle', system)}`,
    ...others,
    say.track.at(shown(fromM, 'distance', system)),
  ];
  return parts.map((part) => part.replaceAll(' ', '\u00a0')).join(', ');
}
