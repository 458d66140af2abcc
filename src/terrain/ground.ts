import type { Feature, FeatureKind } from './feature.ts';
import { featureFields } from './feature.ts';
import type { Hows } from './measure.ts';
import { plusMinus } from './measure.ts';
import type { Corridor, Direction, Stretch } from './obstacle.ts';
import { corridorFields } from './obstacle.ts';
import { reversedCorridor, reversedFeature } from './reverse.ts';
import { gripOf } from './surface.ts';
import type { Harder, Take } from './take.ts';

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
  /** Whose elevations: those recorded unless given, or those of an elevation model. */
  readonly from?: 'track' | 'model';
}

/** A slope and where it was got: what was read at the pin outranks what elevations say. */
export interface KnownSlope extends Omit<TrackSlope, 'from'> {
  readonly from: 'measured here' | 'track' | 'model';
}

/** The slope that counts, in the recorded direction; null when neither the pin nor the track knows it. */
export function knownSlope(stretch: Stretch, trackSlope: TrackSlope | null): KnownSlope | null {
  const { slopeRad } = stretch.plane;
  if (slopeRad !== null) {
    const plusMinusRad = plusMinus(slopeRad, 'angle', stretch.hows['plane.slopeRad']);
    return { slopeRad, plusMinusRad, from: 'measured here' };
  }
  if (trackSlope === null || !Number.isFinite(trackSlope.slopeRad)) return null;
  return { ...trackSlope, from: trackSlope.from ?? 'track' };
}

/**
 * Which way each size makes an obstacle harder. Sizes that are not named may work either way: where a hole lies, how
 * long a hump is.
 */
const HARDER: Readonly<Record<FeatureKind, Readonly<Record<string, Harder>>>> = {
  rut: { depthM: 'more' },
  hole: { depthM: 'more' },
  ledge: { riseM: 'more', faceRad: 'more' },
  ditch: { depthM: 'more' },
  hump: { heightM: 'more' },
  log: { diameterM: 'more' },
  rock: { heightM: 'more' },
  bank: { distanceM: 'less' },
  water: { depthM: 'more', flowMps: 'more' },
  softPatch: { coneIndexPa: 'less' },
};

function takenFeature(feature: Feature, hows: Hows, at: string, take: Take): Feature {
  const taken = { ...feature };
  const sizes = taken as unknown as Record<string, number>;
  for (const [size, field] of Object.entries(featureFields[feature.kind])) {
    if (field.kind !== 'number') continue;
    const path = `${at}.${size}`;
    const span = plusMinus(sizes[size], field.quantity, hows[path]);
    const value = take.measured(path, sizes[size], span, HARDER[feature.kind][size] ?? null);
    sizes[size] = Math.min(field.max, Math.max(field.min, value));
  }
  return taken;
}

function takenCorridor(corridor: Corridor, hows: Hows, take: Take): Corridor {
  const room = (name: 'leftM' | 'rightM' | 'headroomM') => {
    const path = `corridor.${name}`;
    const span = plusMinus(corridor[name], corridorFields[name].quantity, hows[path]);
    return Math.max(0, take.measured(path, corridor[name], span, 'less'));
  };
  return { ...corridor, leftM: room('leftM'), rightM: room('rightM'), headroomM: room('headroomM') };
}

/** The ground of a stretch for one direction of travel, or null when any of its numbers is not known. */
export function groundOf(
  stretch: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
  take: Take,
): Ground | null {
  const slope = knownSlope(stretch, trackSlope);
  const { camberRad } = stretch.plane;
  if (slope === null || camberRad === null) return null;
  const { hows } = stretch;
  const grip = gripOf(stretch.surface);
  const turned = direction === 'reversed' ? -1 : 1;
  const camberSpan = plusMinus(camberRad, 'angle', hows['plane.camberRad']);
  const corridor = takenCorridor(stretch.corridor, hows, take);
  const features = stretch.features.map((feature, i) => takenFeature(feature, hows, `features.${i}`, take));
  const ground: Ground = {
    lengthM: stretch.lengthM,
    slopeRad: turned * take.measured('plane.slopeRad', slope.slopeRad, slope.plusMinusRad, 'more'),
    camberRad: turned * take.measured('plane.camberRad', camberRad, camberSpan, 'more'),
    peakAdhesion: take.printed('surface.adhesion', grip.peak, 'less'),
    slidingAdhesion: take.printed('surface.adhesion', grip.sliding, 'less'),
    rollingResistance: take.printed('surface.rolling', grip.rolling, 'more'),
    corridor: turned < 0 ? reversedCorridor(corridor) : corridor,
    features: turned < 0 ? features.map(reversedFeature) : features,
  };
  return isKnown(ground) ? ground : null;
}

/** The same ground in another plane. */
export function inPlane(
  { lengthM, peakAdhesion, slidingAdhesion, rollingResistance, corridor, features }: Ground,
  slopeRad: number,
  camberRad: number,
): Ground {
  return {
    lengthM,
    slopeRad,
    camberRad,
    peakAdhesion,
    slidingAdhesion,
    rollingResistance,
    corridor,
    features,
  };
}

function isKnown(ground: Ground): boolean {
  const records = [ground, ground.corridor, ...ground.features];
  return records.every((record) => !Object.values(record).some(Number.isNaN));
}
