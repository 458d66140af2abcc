import type { GradedTrack } from '../gradedTrack.ts';

const DAY_MS = 86_400_000;

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
      visits: visits.map((visit) => ({ ...visit, atMs: noonOf(visit.atMs), by: '', note: '' })),
      outcomes: [],
    })),
  };
}

/** Noon of the day (UTC), which is the same day almost everywhere. */
function noonOf(ms: number): number {
  return (Math.floor(ms / DAY_MS) + 0.5) * DAY_MS;
}
