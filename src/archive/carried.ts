import { photosOf, withPhotos } from './photoRecord.ts';
import type { Trip } from './trip.ts';

/** What of people goes along when a trip is given to others; each is a word that someone has to say. */
export interface Carried {
  /** Who drives which vehicle. */
  readonly drivers: boolean;
  /** The notes of trip and obstacles, the radio channel, and the descriptions that came with the recording. */
  readonly notes: boolean;
  /** When each point of the track was recorded: where somebody was, and when. */
  readonly times: boolean;
  /** With what was written under them. They hold no place and no time of their own. */
  readonly photos: boolean;
}

export const CARRIED = ['drivers', 'notes', 'times', 'photos'] as const satisfies (keyof Carried)[];

/** The ground, the lines and the vehicles, and nobody. */
export const LEAST: Carried = { drivers: false, notes: false, times: false, photos: false };

/** The trip with no more of people in it than asked. */
export function carrying(trip: Trip, { drivers, notes, times, photos }: Carried): Trip {
  const { track } = trip;
  const obstacles = photos ? trip.obstacles : withPhotos(trip.obstacles, () => null);
  return {
    ...trip,
    note: notes ? trip.note : '',
    radioChannel: notes ? trip.radioChannel : '',
    track: track && {
      ...track,
      description: notes ? track.description : '',
      timeS: times ? track.timeS : new Float64Array(track.length).fill(NaN),
    },
    waypoints: notes ? trip.waypoints : trip.waypoints.map((one) => ({ ...one, description: '' })),
    obstacles: notes ? obstacles : obstacles.map((one) => ({ ...one, note: '' })),
    vehicles: drivers ? trip.vehicles : trip.vehicles.map((one) => ({ ...one, driver: '' })),
  };
}

/** Which of these a trip has at all. */
export function holds(trip: Trip): Carried {
  const { note, radioChannel, track, waypoints, obstacles, vehicles } = trip;
  const texts = [note, radioChannel, track?.description, ...[...waypoints].map((one) => one.description)];
  return {
    drivers: vehicles.some(({ driver }) => driver !== ''),
    notes: [...texts, ...obstacles.map((one) => one.note)].some(Boolean),
    times: track !== null && track.timeS.some((timeS) => !Number.isNaN(timeS)),
    photos: photosOf(obstacles).length > 0,
  };
}
