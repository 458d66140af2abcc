import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { obstacleSaying } from '../injections.ts';
import { BEN, CLEO, TRIP, wholeTrack } from './replicas.ts';

/** A graded track with one text in every place where a person can write one. */
export function saying(text: string, id = 'track'): GradedTrack {
  const { track, waypoints, surveyed, ...rest } = wholeTrack();
  const [vehicle] = TRIP.vehicles;
  return {
    ...rest,
    id,
    name: text,
    area: text,
    note: text,
    track: track && { ...track, name: text, description: text },
    waypoints: waypoints.map((waypoint) => ({ ...waypoint, name: text, description: text })),
    surveyed: surveyed.map(({ obstacle, visits }) => ({
      obstacle: obstacleSaying(obstacle, text),
      visits: visits.flatMap((visit) => [
        { ...visit, by: text, note: text },
        { ...visit, id: `${visit.id} again`, atMs: BEN.atMs, by: text, note: text },
      ]),
      outcomes: [
        {
          id: 'o0',
          atMs: CLEO.atMs,
          by: text,
          vehicle: { ...vehicle, name: text, driver: text },
          lineId: obstacle.lines[0].id,
          direction: 'as recorded',
          rung: text,
          said: 'goes',
          did: 'turned back',
          note: text,
        },
      ],
    })),
  };
}
