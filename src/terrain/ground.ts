import type { Feature } from './feature.ts';
import { plusMinus } from './measure.ts';
import type { Corridor, Direction, Stretch } from './obstacle.ts';
import { reversedCorridor, reversedFeature } from './reverse.ts';
import { gripOf } from './surface.ts';
import { awayFromZero, worstCorridor, worstFeature } from './worst.ts';

/**
 * What one vehicle drives over in its own direction of travel: every value decided, no ranges left. The frame is the
 * obstacle's: origin at the pin, x forward, y left, z normal to the reference plane; gravity is turned instead.
 */
export interface Ground {
  readonly lengthM: number;
  /** Climbing positive. */
  readonly slopeRad: number;
  /** Left side high positive. */
  readonly camberRad: number;
  readonly peakAdhesion: number;
  readonly slidingAdhesion: number;
  readonly rollingResistance: number;
  readonly corridor: Corridor;
  readonly features: readonly Feature[];
}

/** Slope of the track at a place, in the recorded direction, as its elevations tell it. */
export interface TrackSlope {
  readonly slopeRad: number;
  readonly plusMinusRad: number;
}

/** A slope and where it was got: what was read at the pin outranks what the track's elevations say. */
export interface KnownSlope extends TrackSlope {
  readonly from: 'measured here' | 'track';
}

/** The slope that counts, in the recorded direction; null when neither the pin nor the track knows it. */
export function knownSlope(stretch: Stretch, trackSlope: TrackSlope | null): KnownSlope | null {
  const { slopeRad } = stretch.plane;
  if (slopeRad !== null) {
    const plusMinusRad = plusMinus(slopeRad, 'angle', stretch.hows['plane.slopeRad']);
    return { slopeRad, plusMinusRad, from: 'measured here' };
  }
  if (trackSlope === null || !Number.isFinite(trackSlope.slopeRad)) return null;
  return { ...trackSlope, from: 'track' };
}

/** `entered`: the values as they stand and the usual adhesion. `worst`: each at the hard end of its range. */
export type Certainty = 'entered' | 'worst';

/** The ground of a stretch for one direction of travel, or null when its slope or camber is not known. */
export function groundOf(
  stretch: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
  certainty: Certainty,
): Ground | null {
  const slope = knownSlope(stretch, trackSlope);
  const { camberRad } = stretch.plane;
  if (slope === null || camberRad === null) return null;
  const { hows } = stretch;
  const worst = certainty === 'worst';
  const grip = gripOf(stretch.surface);
  const turned = direction === 'reversed' ? -1 : 1;
  const corridor = worst ? worstCorridor(stretch.corridor, hows) : stretch.corridor;
  const features = worst
    ? stretch.features.map((feature, i) => worstFeature(feature, hows, `features.${i}`))
    : stretch.features;
  const camberSpan = worst ? plusMinus(camberRad, 'angle', hows['plane.camberRad']) : 0;
  return {
    lengthM: stretch.lengthM,
    slopeRad: awayFromZero(turned * slope.slopeRad, worst ? slope.plusMinusRad : 0),
    camberRad: awayFromZero(turned * camberRad, camberSpan),
    peakAdhesion: worst ? grip.peak.low : grip.peak.usual,
    slidingAdhesion: worst ? grip.sliding.low : grip.sliding.usual,
    rollingResistance: worst ? grip.rolling.high : grip.rolling.usual,
    corridor: turned < 0 ? reversedCorridor(corridor) : corridor,
    features: turned < 0 ? features.map(reversedFeature) : features,
  };
}
