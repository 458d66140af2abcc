import type { Trip } from '../archive/trip.ts';
import { stepM } from '../route/ellipsoid.ts';
import { momentAt } from '../route/moment.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import { say } from '../words/words.ts';
import type { Pin } from './obstacleEdit.ts';
import { pinOnward } from './obstacleEdit.ts';
import type { PhotoTags } from './photoTags.ts';
import { pinAt, pinNear } from './trackEdit.ts';

/** Farther from the track than this, a photo shows something else. */
const MOST_OFF_M = 200;
/** A photo this near to an obstacle shows that one. */
const NEAR_M = 25;

/** Where a photo was taken, as far as its tags tell. */
export type PhotoPlace =
  | { readonly by: 'position' | 'time'; readonly pin: Pin; readonly offM: number }
  | { readonly by: null; readonly why: string };

/** What is known of the camera's clock. */
export interface CameraClock {
  /** How far it runs ahead of the right time. */
  readonly aheadS: number;
  /** The zone that it is taken to show where the photo does not say. */
  readonly zoneOf: (clockS: number) => number;
}

/** The place of a photo: by its position, else by its time against the times of the track. */
export function placeOfPhoto(tags: PhotoTags, trip: Trip, clock: CameraClock, system: System): PhotoPlace {
  const { track, obstacles } = trip;
  if (tags.lng !== null && tags.lat !== null) {
    if (track === null) return { by: 'position', pin: pinOnward(obstacles, tags.lng, tags.lat), offM: 0 };
    const { pin, offM } = pinNear(track, tags.lng, tags.lat);
    if (offM <= MOST_OFF_M) return { by: 'position', pin, offM };
    return { by: null, why: say.photos.farOff(shown(offM, 'distance', system)) };
  }
  const timeS = timeOf(tags, clock);
  if (timeS === null) return { by: null, why: say.photos.neither };
  if (track === null) return { by: null, why: say.photos.onlyWhen };
  const moment = momentAt(track, timeS);
  if (moment === null) return { by: null, why: say.photos.notRecording };
  if (moment.withinM > MOST_OFF_M) return { by: null, why: say.photos.hole };
  return { by: 'time', pin: pinAt(track, moment.stationM), offM: moment.withinM };
}

/** Universal time at which a photo was taken. A clock that tells its zone comes first, then the satellites. */
export function timeOf({ clockS, zoneS, gpsS }: PhotoTags, { aheadS, zoneOf }: CameraClock): number | null {
  if (clockS !== null && zoneS !== null) return clockS - zoneS - aheadS;
  if (gpsS !== null) return gpsS;
  return clockS === null ? null : clockS - zoneOf(clockS) - aheadS;
}

/** The obstacle that a photo taken here most likely shows, if there is one. */
export function obstacleNear(obstacles: readonly Obstacle[], { lng, lat }: Pin): Obstacle | null {
  const away = obstacles.map((obstacle) => stepM(obstacle.lng, obstacle.lat, lng, lat));
  const least = Math.min(...away);
  return least <= NEAR_M ? obstacles[away.indexOf(least)] : null;
}
