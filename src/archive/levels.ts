import { placesOn } from '../convoy/places.ts';
import { CLASSIFICATIONS } from '../grade/classification.ts';
import { gradeOf } from '../grade/rating.ts';
import { slopeOf } from '../route/slope.ts';
import type { GradedTrack } from './gradedTrack.ts';

/** Levels by sizes in the recorded direction, dry: a track is at least as hard. */
export function levelsOf({ track, surveyed }: GradedTrack): Record<string, number> {
  const places = placesOn(
    track,
    surveyed.map(({ obstacle }) => obstacle),
  );
  const segments = track === null ? null : slopeOf(track).segments;
  return Object.fromEntries(
    CLASSIFICATIONS.map((id) => [id, gradeOf(places, 'as recorded', 'dry', id, segments, true).level]),
  );
}
