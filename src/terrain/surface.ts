import type { FieldTable } from '../field.ts';
import { choice } from '../field.ts';
import { say } from '../words/words.ts';

/** A range out of published tables: `low` and `high` bound what they print, `usual` is the middle between them. */
export interface Range {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
}

export interface Grip {
  /** Greatest tyre force over wheel load, rolling; dimensionless. */
  readonly peak: Range;
  /** Tyre force over wheel load with the wheel spinning or locked. */
  readonly sliding: Range;
  /** Rolling resistance over wheel load. */
  readonly rolling: Range;
  readonly source: string;
}

export const MATERIALS = [
  'gravel',
  'earth',
  'clay',
  'sand',
  'rock',
  'grass',
  'mud',
  'snow',
  'ice',
  'asphalt',
  'concrete',
] as const;
export const CONDITIONS = ['dry', 'wet'] as const;

export type Material = (typeof MATERIALS)[number];
export type Condition = (typeof CONDITIONS)[number];

export interface Surface {
  readonly material: Material;
  readonly condition: Condition;
  /** What is held of kinds of ground while it is judged; stored with the trip and not with the surface. */
  readonly held?: readonly HeldGrip[];
}

/** A kind of ground that someone holds to be slipperier than tables print, after what vehicles did on it. */
export interface HeldGrip {
  readonly material: Material;
  readonly condition: Condition;
  /** The least peak adhesion that is reckoned with; where tables print a lower one, that counts. */
  readonly peak: number;
}

export const surfaceFields = {
  material: choice(say.terrainFields.surface.material, MATERIALS),
  condition: choice(say.terrainFields.surface.condition, CONDITIONS),
} satisfies FieldTable;

/**
 * Sliding over peak adhesion. From memory: Wong, Theory of Ground Vehicles, ch. 1 after Taborek 1957, prints ratios of
 * 0.7 (ice) to 0.96 (dry earth); 0.8 is taken for all.
 */
const SLIDING_OVER_PEAK = 0.8;

function range(low: number, high: number): Range {
  return { low, usual: (low + high) / 2, high };
}

function grip(peak: Range, rolling: Range, source: string): Grip {
  const sliding = range(peak.low * SLIDING_OVER_PEAK, peak.high * SLIDING_OVER_PEAK);
  return { peak, sliding, rolling, source };
}

const EARTH_ROLLING = range(0.04, 0.08);

/**
 * Adhesion and rolling resistance as printed; `low` is the lowest value any of the tables gives for that ground.
 * Where no table names the ground, the nearest one is taken and the source says so.
 */
const GRIPS: Readonly<Record<Material, Readonly<Record<Condition, Grip>>>> = {
  gravel: {
    dry: grip(range(0.35, 0.7), range(0.012, 0.08), say.sources.gravel.dry),
    wet: grip(range(0.3, 0.5), range(0.02, 0.08), say.sources.gravel.wet),
  },
  earth: {
    dry: grip(range(0.35, 0.6), EARTH_ROLLING, say.sources.earth.dry),
    wet: grip(range(0.15, 0.25), EARTH_ROLLING, say.sources.earth.wet),
  },
  clay: {
    dry: grip(range(0.5, 0.6), EARTH_ROLLING, say.sources.clay.dry),
    wet: grip(range(0.15, 0.25), EARTH_ROLLING, say.sources.clay.wet),
  },
  sand: {
    dry: grip(range(0.3, 0.4), range(0.1, 0.4), say.sources.sand.dry),
    wet: grip(range(0.3, 0.4), range(0.1, 0.2), say.sources.sand.wet),
  },
  rock: {
    dry: grip(range(0.6, 0.7), range(0.02, 0.04), say.sources.rock.dry),
    wet: grip(range(0.4, 0.5), range(0.02, 0.04), say.sources.rock.wet),
  },
  grass: {
    dry: grip(range(0.35, 0.6), range(0.04, 0.14), say.sources.grass.dry),
    wet: grip(range(0.2, 0.2), range(0.08, 0.17), say.sources.grass.wet),
  },
  mud: {
    dry: grip(range(0.15, 0.25), range(0.1, 0.75), say.sources.mud.dry),
    wet: grip(range(0.15, 0.25), range(0.33, 0.75), say.sources.mud.wet),
  },
  snow: {
    dry: grip(range(0.2, 0.35), range(0.1, 0.3), say.sources.snow.dry),
    wet: grip(range(0.15, 0.25), range(0.1, 0.3), say.sources.snow.wet),
  },
  ice: {
    dry: grip(range(0.05, 0.15), range(0.01, 0.02), say.sources.ice.dry),
    wet: grip(range(0.05, 0.1), range(0.01, 0.02), say.sources.ice.wet),
  },
  asphalt: {
    dry: grip(range(0.65, 0.9), range(0.01, 0.02), say.sources.asphalt.dry),
    wet: grip(range(0.45, 0.6), range(0.01, 0.02), say.sources.asphalt.wet),
  },
  concrete: {
    dry: grip(range(0.75, 0.9), range(0.01, 0.02), say.sources.concrete.dry),
    wet: grip(range(0.5, 0.6), range(0.01, 0.02), say.sources.concrete.wet),
  },
};

/** Whether what is held of one ground counts for another: wet, it is taken to be no less slippery than it is dry. */
function countsFor(one: HeldGrip, { material, condition }: Surface): boolean {
  return one.material === material && (one.condition === condition || one.condition === 'dry');
}

/**
 * What a surface offers a tyre, as ranges with their source. What is held of it lowers the low ends, and with them the
 * middle; it raises nothing.
 */
export function gripOf(surface: Surface): Grip {
  const { material, condition, held = [] } = surface;
  const printed = GRIPS[material][condition];
  const peaks = held.filter((one) => countsFor(one, surface));
  const peakLow = Math.min(printed.peak.low, ...peaks.map(({ peak }) => peak));
  if (!(peakLow < printed.peak.low)) return printed;
  const slidingLow = Math.min(printed.sliding.low, peakLow * SLIDING_OVER_PEAK);
  return {
    ...printed,
    peak: range(peakLow, printed.peak.high),
    sliding: range(slidingLow, printed.sliding.high),
  };
}
