import { dateOnly, sameUtcDay } from '../dateOnly.ts';
import type { GradedTrack, Visit } from '../gradedTrack.ts';

/**
 * The ground and the lines, and nobody: without who measured and at what time of day, when each point was recorded, notes,
 * photos, and what became of people's vehicles.
 */
export function withoutPeople(graded: GradedTrack): GradedTrack {
  const { track } = graded;
  return {
    ...graded,
    note: '',
    track: track && { ...track, description: '', timeS: new Float64Array(track.length).fill(NaN) },
    waypoints: graded.waypoints.map((one) => ({ ...one, description: '' })),
    surveyed: graded.surveyed.map(({ obstacle, visits }) => ({
      obstacle: { ...obstacle, note: '', photos: [] },
      visits: visits.map((visit, i) => ({ ...visit, atMs: dateOf(visits, i), by: '', note: '' })),
      outcomes: [],
    })),
  };
}

/** The day alone; those of one day stay in their order. */
function dateOf(visits: readonly Visit[], i: number): number {
  const { atMs } = visits[i];
  return dateOnly(atMs, visits.slice(0, i).filter((before) => sameUtcDay(before.atMs, atMs)).length);
}
