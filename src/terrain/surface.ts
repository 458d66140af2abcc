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
}

export const surfaceFields = {
  material: choice(say.terrainFields.surface.material, MATERIALS),
  condition: choice(say.terrainFields.surface.condition, CONDITIONS),
} satisfies FieldTable;

const TOOLBOX = 'Engineering ToolBox, "Tractive effort" (adhesion) and "Rolling resistance", tables';
const NOON = 'Noon, Engineering Analysis of Vehicular Accidents, 1994, coefficient table';
const TYRES = 'tyre supplier table "tyre adhesion coefficients" (Bohnenkamp), dry / wet';
const CARVILL = "Carvill, Mechanical Engineer's Data Handbook, rolling resistance table";
const MARKS = "Marks' Standard Handbook for Mechanical Engineers, rolling friction table";
const WINCHING = 'winching resistance factors of a strap supplier, low authority';
const SNOW = 'recovery engineer case study, snow rolling-to-pull 0.1 to 0.3, low authority';

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
    dry: grip(
      range(0.35, 0.7),
      range(0.012, 0.08),
      `${TOOLBOX}: dry gravel 0.6 to 0.7; ${NOON}: 0.35; ${MARKS}`,
    ),
    wet: grip(
      range(0.3, 0.5),
      range(0.02, 0.08),
      `${TOOLBOX}: wet gravel 0.3 to 0.5; ${MARKS}: wet loose gravel 0.06`,
    ),
  },
  earth: {
    dry: grip(
      range(0.35, 0.6),
      EARTH_ROLLING,
      `${TYRES}: earth 0.50 to 0.60; ${NOON}: gravel and dirt road 0.35; ${TOOLBOX}`,
    ),
    wet: grip(range(0.15, 0.25), EARTH_ROLLING, `${TYRES}: earth wet 0.15 to 0.25; ${TOOLBOX}`),
  },
  clay: {
    dry: grip(range(0.5, 0.6), EARTH_ROLLING, `${TOOLBOX}: dry clay 0.5 to 0.6`),
    wet: grip(range(0.15, 0.25), EARTH_ROLLING, `no table for wet clay; taken as wet earth, ${TYRES}`),
  },
  sand: {
    dry: grip(range(0.3, 0.4), range(0.1, 0.4), `${TOOLBOX}: loose sand 0.3 to 0.4; ${CARVILL}: 0.1 to 0.2`),
    wet: grip(
      range(0.3, 0.4),
      range(0.1, 0.2),
      `no table for wet sand; adhesion as loose sand, ${TOOLBOX}; ${WINCHING}: 0.17 to 0.20`,
    ),
  },
  rock: {
    dry: grip(
      range(0.6, 0.7),
      range(0.02, 0.04),
      `no table for bare rock; taken as crushed stone 0.60 to 0.70, ${TYRES}; ${TOOLBOX}: cobbles 0.03`,
    ),
    wet: grip(
      range(0.4, 0.5),
      range(0.02, 0.04),
      `no table for bare rock; taken as crushed stone wet 0.40 to 0.50, ${TYRES}; ${TOOLBOX}: cobbles 0.03`,
    ),
  },
  grass: {
    dry: grip(
      range(0.35, 0.6),
      range(0.04, 0.14),
      `no table for dry grass; taken as dry earth, ${TYRES}, ${NOON}; ${WINCHING}: dry grass 0.14`,
    ),
    wet: grip(range(0.2, 0.2), range(0.08, 0.17), `${NOON}: wet grassy field 0.20; ${WINCHING}`),
  },
  mud: {
    dry: grip(
      range(0.15, 0.25),
      range(0.1, 0.75),
      `no table for mud; taken as wet earth, ${TYRES}; ${WINCHING}: light to moderate mud 0.33, to the rim 0.75`,
    ),
    wet: grip(
      range(0.15, 0.25),
      range(0.33, 0.75),
      `no table for mud; taken as wet earth, ${TYRES}; ${WINCHING}: light to moderate mud 0.33, to the rim 0.75`,
    ),
  },
  snow: {
    dry: grip(
      range(0.2, 0.35),
      range(0.1, 0.3),
      `${TOOLBOX}: 0.2; ${NOON}: 0.20 to 0.25; ${TYRES}: packed 0.25 to 0.35; ${SNOW}`,
    ),
    wet: grip(range(0.15, 0.25), range(0.1, 0.3), `${NOON}: snow 0.20 to 0.25, ice 0.15; ${SNOW}`),
  },
  ice: {
    dry: grip(range(0.05, 0.15), range(0.01, 0.02), `${TYRES}: 0.05 to 0.15; ${NOON}: 0.10 to 0.15`),
    wet: grip(range(0.05, 0.1), range(0.01, 0.02), `${TYRES}: from 0.05; ${TOOLBOX}: wet ice 0.1`),
  },
  asphalt: {
    dry: grip(range(0.65, 0.9), range(0.01, 0.02), `${TYRES}: 0.70 to 0.80; ${NOON}: 0.65; ${TOOLBOX}`),
    wet: grip(range(0.45, 0.6), range(0.01, 0.02), `${TYRES}: 0.45 to 0.55; ${TOOLBOX}: 0.6`),
  },
  concrete: {
    dry: grip(range(0.75, 0.9), range(0.01, 0.015), `${TYRES}: 0.80 to 0.90; ${NOON}: 0.75; ${TOOLBOX}`),
    wet: grip(range(0.5, 0.6), range(0.01, 0.015), `${TYRES}: 0.50 to 0.60; ${TOOLBOX}: 0.6`),
  },
};

/** What a surface offers a tyre, as ranges with their source. */
export function gripOf(surface: Surface): Grip {
  return GRIPS[surface.material][surface.condition];
}
