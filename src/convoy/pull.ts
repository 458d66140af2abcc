import { degrees } from '../units.ts';

/**
 * Resistance over weight of ground to a vehicle that is pulled across it: winching resistance factors as a strap
 * supplier prints them (dawnerz load calculation sheet; low authority, rather high than low).
 */
export const BEDDING = {
  'hard surface': 0.04,
  'dry grass': 0.14,
  'hard wet sand': 0.17,
  'soft wet sand': 0.2,
  'loose gravel or dry sand': 0.25,
  'light mud': 0.33,
  'mud to the rim': 0.75,
  'mud to mid-wheel': 1,
  'mud past mid-wheel': 1.33,
} as const;

export type Bedding = keyof typeof BEDDING;

/** Added for half the axles or fewer that do not turn, and for more; the same sheet. */
const SEIZED = { none: 0, 'half the axles or fewer': 0.33, 'more than half the axles': 0.67 } as const;

/** Kept in hand on the sum; the same sheet. */
const RESERVE_SHARE = 0.2;

/**
 * Field rule for a slope: a sixtieth of the weight for each degree, the whole weight from 45° up. Between 40°, where
 * the printed factors end, and 45° it goes on at 1/60.
 */
export function slopeFactor(slopeRad: number): number {
  const slopeDeg = degrees(Math.abs(slopeRad));
  return slopeDeg >= 45 ? 1 : slopeDeg / 60;
}

export interface Stuck {
  readonly weightN: number;
  readonly bedding: Bedding;
  readonly seized: keyof typeof SEIZED;
  /** Slope that it is pulled up; a pull downhill is reckoned as on the level. */
  readonly slopeRad: number;
}

/** What the pull must overcome, and the same with the sheet's reserve, newtons. */
export function fieldPullN(stuck: Stuck): { readonly resistanceN: number; readonly withReserveN: number } {
  const slope = stuck.slopeRad > 0 ? slopeFactor(stuck.slopeRad) : 0;
  const resistanceN = stuck.weightN * (BEDDING[stuck.bedding] + slope + SEIZED[stuck.seized]);
  return { resistanceN, withReserveN: resistanceN * (1 + RESERVE_SHARE) };
}

/**
 * Pull of a winch with `layer` layers on the drum (1 is the bare drum): constant torque on a growing arm,
 * F_n = F_1 / (1 + 0.1 (n − 1)), within 0.3 % of TM 9-2320-279-10-2 Table 2-7.
 */
export function winchPullN(firstLayerN: number, layer: number): number {
  return firstLayerN / (1 + 0.1 * (layer - 1));
}

/** Layers that a drum is taken to hold with the rope all but wound in; the weakest pull it may be asked for. */
const FULL_DRUM = 4;

export interface Tackle {
  /** Parts of rope at the load; 1 is a straight pull. */
  readonly parts: number;
  /** Pull in the rope with a tenth of the load lost in each sheave. */
  readonly ropeN: number;
}

/** Most parts of rope that a club rigs in the field; common practice, no source. */
const MOST_PARTS = 4;

/**
 * Least tackle by which a winch moves a load, or null where none does. Parts = load / capacity rounded up, a tenth of
 * the load more for each sheave, rope pull = total / parts, which must stay below the capacity, else one part more
 * (US Army 63H34F01 Suppl. 1b; TB 9-2350-292-10 step 5).
 */
export function tackleFor(loadN: number, capacityN: number): Tackle | null {
  if (capacityN <= 0) return null;
  for (let parts = Math.max(1, Math.ceil(loadN / capacityN)); parts <= MOST_PARTS; parts++) {
    const ropeN = (loadN * (1 + 0.1 * (parts - 1))) / parts;
    if (ropeN < capacityN) return { parts, ropeN };
  }
  return null;
}

/** Tackle for a winch with a full drum, as it must be reckoned when nobody knows how much rope will be out. */
export function winchTackle(loadN: number, winchN: number): Tackle | null {
  return tackleFor(loadN, winchPullN(winchN, FULL_DRUM));
}
