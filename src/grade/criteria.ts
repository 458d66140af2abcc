import type { Condition, Material } from '../terrain/surface.ts';
import type { Quantity } from '../units.ts';
import { rad } from '../units.ts';
import type { ClassificationId } from './classification.ts';

/**
 * What the published words say of ground, as numbers. The words are the classifications'; EVERY NUMBER HERE IS OUR READING,
 * which is said wherever a grade is shown. All are held against values at the hard end of their range.
 */

/** What is read off the sizes of an obstacle, each the hardest that there is. */
export const MEASURES = ['slope', 'camber', 'rut', 'step', 'across', 'water', 'flow', 'grip'] as const;

export type Measure = (typeof MEASURES)[number];

export interface Criterion {
  readonly quantity: Quantity;
  /** Which way is harder. */
  readonly harder: 'more' | 'less';
  /** The last value that each level but the hardest allows, easiest first. */
  readonly limits: Readonly<Record<ClassificationId, readonly number[]>>;
}

export const CRITERIA: Readonly<Record<Measure, Criterion>> = {
  /**
   * "Minor gradients", up or down: below the steepest class that military route reconnaissance tells apart, 14 % (EN5622
   * §1-1). "Steep" from 25 %, where the handbook would have no vehicle towed (TB 9-2350-292-10, pp. 21–23). "Very steep"
   * from 20°, a grade 5 from 25°: common practice, no source.
   */
  slope: {
    quantity: 'angle',
    harder: 'more',
    limits: {
      australia: [Math.atan(0.14), Math.atan(0.25), rad(20)],
      'south africa': [Math.atan(0.14), Math.atan(0.25), rad(20), rad(25)],
    },
  },
  /**
   * Neither classification names side slope, which frightens and tips all the same. A level one that was judged by eye (± 5°)
   * stays easy; most passengers want to get out from 12°, most leaders walk from 20°. Common practice, no source.
   */
  camber: {
    quantity: 'angle',
    harder: 'more',
    limits: {
      australia: [rad(6), rad(12), rad(20)],
      'south africa': [rad(6), rad(12), rad(16), rad(20)],
    },
  },
  /**
   * Depth of ruts and holes. "No obstacles": what a car's wheel takes at a walk. "Standard clearance" is 0.20 to 0.235 m
   * under the differentials of our classes: to 0.20 m no standard axle reaches the crown. From 0.40 m a standard wheel
   * (0.385 m radius) stands in to its hub, and clearance must be high.
   */
  rut: {
    quantity: 'size',
    harder: 'more',
    limits: { australia: [0.1, 0.2, 0.4], 'south africa': [0.1, 0.2, 0.3, 0.4] },
  },
  /**
   * Height of ledges, rocks and logs. 0.10 m as above; 0.20 m goes under a standard differential; a stiff wheel has no way
   * over an upright step as high as its radius, 0.385 m in a standard one, and few tyres up to 0.35 m.
   */
  step: {
    quantity: 'size',
    harder: 'more',
    limits: { australia: [0.1, 0.2, 0.35], 'south africa': [0.1, 0.2, 0.27, 0.35] },
  },
  /** Depth of ditches and height of humps across the way: "no obstacles" as above, then half and a whole standard wheel. */
  across: {
    quantity: 'size',
    harder: 'more',
    limits: { australia: [0.1, 0.4, 0.8], 'south africa': [0.1, 0.3, 0.5, 0.8] },
  },
  /**
   * Depth of water. None is in the words for Easy; "shallow" is to 0.30 m, what the lowest of our classes may wade; "possible
   * water crossings" to 0.60 m, a hand's breadth under the 0.70 m of standard ones. The South African words name no
   * water: a wet film to 0.15 m, where flowing water begins to move cars (VICSES, "15 to float"), then the same.
   */
  water: {
    quantity: 'size',
    harder: 'more',
    limits: { australia: [0, 0.3, 0.6], 'south africa': [0.15, 0.3, 0.5, 0.7] },
  },
  /**
   * Depth × flow. Standing water only at the easiest level, then two thirds of what moved cars of 1.05 t (0.15 m²/s), 1.5 t
   * (0.30) and 2.5 t (0.45) in full-scale tests (UNSW Water Research Laboratory, published by VICSES).
   */
  flow: {
    quantity: 'depthFlow',
    harder: 'more',
    limits: { australia: [0, 0.1, 0.2], 'south africa': [0, 0.1, 0.2, 0.3] },
  },
  /**
   * Least adhesion that any table prints for the ground. "Slippery" below 0.30, the lowest of wet gravel; below 0.15, the
   * lowest of wet earth, only ice remains.
   */
  grip: {
    quantity: 'number',
    harder: 'less',
    limits: { australia: [0.3, 0.15, 0.1], 'south africa': [0.3, 0.15, 0.15, 0.1] },
  },
};

/** Ground that the words name, and the least level that it makes: "rocky, slippery, sandy sections"; "soft sand or loose strata". */
export const NAMED_GROUND: Readonly<Record<ClassificationId, Partial<Readonly<Record<Material, number>>>>> = {
  australia: { rock: 2, sand: 2, mud: 2, snow: 2, ice: 3 },
  'south africa': { sand: 2, mud: 2, snow: 2, ice: 3 },
};

/** Least level of ground that was found to give way under a wheel: no "unsealed road", and "soft" in the words of grade 2. */
export const SOFT_LEVEL = 2;

/** What rain makes of ground. */
export const RAINED_ON: Condition = 'wet';

/** The level that a value makes by itself, from 1. */
export function levelAt(measure: Measure, classification: ClassificationId, value: number): number {
  const { harder, limits } = CRITERIA[measure];
  const exceeds = (limit: number) => (harder === 'more' ? value > limit + SLACK : value < limit - SLACK);
  return 1 + limits[classification].filter(exceeds).length;
}

/** Sums of binary fractions: 5° ± 1° is 6°. */
const SLACK = 1e-9;
