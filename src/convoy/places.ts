import type { SlopeProfile } from '../route/slope.ts';
import { slopeAt, slopeOf } from '../route/slope.ts';
import type { Track } from '../route/track.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import { withHeld } from '../terrain/heldGrip.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { HeldGrip } from '../terrain/surface.ts';
import type { Place } from './matrix.ts';

/** A place as a worker needs it: without the photos, which are large and of which nothing is judged. */
export function bare({ obstacle, trackSlope }: Place): Place {
  return { obstacle: { ...obstacle, photos: [] }, trackSlope };
}

/**
 * The obstacles of a track, each with the slope that the track's elevations tell there; `held` is ground that is held
 * slipperier than printed.
 */
export function placesOn(
  track: Track | null,
  obstacles: readonly Obstacle[],
  held: readonly HeldGrip[] = [],
): Place[] {
  const profile = track && slopeOf(track);
  return obstacles.map((obstacle) => ({
    obstacle: withHeld(obstacle, held),
    trackSlope: profile && trackSlopeAt(profile, obstacle.stationM),
  }));
}

/** The slope that a track's elevations tell at a station, or null where they do not. */
export function trackSlopeAt(profile: SlopeProfile, stationM: number): TrackSlope | null {
  const { slopeRad, plusMinusRad } = slopeAt(profile, stationM);
  const from = profile.from === 'model' ? 'model' : 'track';
  return Number.isNaN(slopeRad) ? null : { slopeRad, plusMinusRad, from };
}
