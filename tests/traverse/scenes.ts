import type { Feature } from '../../src/terrain/feature.ts';
import type { Ground } from '../../src/terrain/ground.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { AXLE_KINDS } from '../../src/vehicle/specs.ts';

/** Numbers in [0, 1) from a seed, the same everywhere (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const openCorridor = {
  leftM: 2.5,
  leftBound: 'open',
  rightM: 2.5,
  rightBound: 'open',
  headroomM: 4,
} as const;

export const flatGround: Ground = {
  lengthM: 10,
  slopeRad: 0,
  camberRad: 0,
  peakAdhesion: 0.6,
  slidingAdhesion: 0.48,
  rollingResistance: 0.05,
  corridor: openCorridor,
  features: [],
};

export interface Scene {
  readonly values: VehicleValues;
  readonly ground: Ground;
  /** Where mid-wheelbase stands. */
  readonly stationM: number;
}

/** Whether a scene of this seed is on a camber near to tipping, 29° to 49°: every tenth. */
export const isSteep = (seed: number): boolean => seed % 10 === 0;

/**
 * A random vehicle somewhere on a random obstacle, which may be steep. All that carries the vehicle is drawn here, so that
 * a change to the classes leaves the scenes as they are.
 */
export function randomScene(seed: number): Scene {
  const next = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * next();
  const pick = <T>(from: readonly T[]): T => from[Math.floor(next() * from.length)];
  const trackWidthM = between(1.35, 1.7);
  const values: VehicleValues = {
    ...classValues('mid-size wagon'),
    wheelbaseM: between(2.2, 3.6),
    frontTrackWidthM: trackWidthM,
    rearTrackWidthM: trackWidthM + between(-0.03, 0.03),
    frontAxle: pick(AXLE_KINDS),
    rearAxle: pick(AXLE_KINDS),
    frontBumpM: between(0.07, 0.12),
    frontDroopM: between(0.08, 0.16),
    rearBumpM: between(0.07, 0.14),
    rearDroopM: between(0.08, 0.18),
    frontRideHz: between(1.1, 1.8),
    rearRideHz: between(1.2, 1.9),
    frontAntiRollNmPerRad: between(0, 35e3),
    rearAntiRollNmPerRad: between(0, 20e3),
    massKg: between(1100, 3200),
    frontShare: between(0.44, 0.56),
    massHeightM: between(0.58, 0.85),
    roofLoadKg: 0,
    tyreDiameterM: between(0.68, 0.85),
    tyreStiffnessNPerM: between(180e3, 330e3),
  };
  const features = Array.from({ length: 1 + Math.floor(next() * 3) }, () => randomFeature(between, pick));
  const tipping = isSteep(seed);
  const ground: Ground = {
    ...flatGround,
    slopeRad: tipping ? between(-0.1, 0.1) : between(-0.3, 0.3),
    camberRad: tipping ? pick([1, -1]) * between(0.5, 0.85) : between(-0.2, 0.2),
    features,
  };
  return { values, ground, stationM: between(-2.5, 2.5) };
}

function randomFeature(
  between: (low: number, high: number) => number,
  pick: <T>(from: readonly T[]) => T,
): Feature {
  const side = pick([1, -1]);
  switch (pick(['rut', 'hole', 'ditch', 'hump', 'ledge', 'rock', 'log'] as const)) {
    case 'rut':
      return {
        kind: 'rut',
        centreYM: side * between(0.5, 0.9),
        widthM: between(0.3, 0.8),
        depthM: between(0.05, 0.4),
        fromM: -4,
        toM: 4,
        runM: between(0.5, 2),
        section: pick(['U', 'V']),
      };
    case 'hole':
      return {
        kind: 'hole',
        xM: between(-2, 2),
        yM: side * between(0.5, 0.9),
        lengthM: between(0.8, 2.5),
        widthM: between(0.6, 1.5),
        depthM: between(0.05, 0.4),
      };
    case 'ditch':
      return {
        kind: 'ditch',
        xM: between(-1, 1),
        widthM: between(0.6, 3),
        depthM: between(0.05, 0.4),
        skewRad: between(-0.6, 0.6),
      };
    case 'hump':
      return {
        kind: 'hump',
        xM: between(-1, 1),
        lengthM: between(1.5, 6),
        heightM: between(0.1, 0.6),
        skewRad: between(-0.6, 0.6),
      };
    case 'ledge':
      return {
        kind: 'ledge',
        xM: between(-1, 1),
        riseM: side * between(0.05, 0.3),
        faceRad: between(0.4, 1.2),
        skewRad: between(-0.6, 0.6),
      };
    case 'rock':
      return {
        kind: 'rock',
        xM: between(-2, 2),
        yM: side * between(0.4, 0.9),
        heightM: between(0.05, 0.25),
        lengthM: between(0.3, 1.2),
        widthM: between(0.3, 1.2),
      };
    case 'log':
      return {
        kind: 'log',
        xM: between(-1, 1),
        diameterM: between(0.08, 0.25),
        skewRad: between(-0.5, 0.5),
        fromYM: -3,
        toYM: 3,
      };
  }
}
