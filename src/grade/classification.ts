import { say } from '../words/words.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { ReferenceName } from './reference.ts';
import { AUSTRALIA } from './classifications/australia.ts';
import { SOUTH_AFRICA } from './classifications/southAfrica.ts';

/** Published classifications of four-wheel-drive tracks. */
export const CLASSIFICATIONS = ['australia', 'south africa'] as const;

export type ClassificationId = (typeof CLASSIFICATIONS)[number];

/** The ground that a grade is said for: as it was entered, or with everything wet that rain can wet. */
export const SEASONS = ['dry', 'wet'] as const;

export type Season = (typeof SEASONS)[number];

/** How much of its drive a reference vehicle may use: high range alone, low range and the centre lock, lockers too. */
export type Gear = 'high' | 'low' | 'locked';

/** What the words of a level ask of one kind of vehicle: that it goes here by itself. */
export interface Trial {
  readonly vehicle: ReferenceName;
  readonly gear: Gear;
  /** Whether tyres may be let down. */
  readonly tyresDown: boolean;
  /** Whether "goes with care" is enough; not where the words name novices. */
  readonly care: boolean;
}

export interface Level {
  /** All of them must go; what they ask grows less from level to level. */
  readonly trials: readonly Trial[];
  /** Tread that the words, as they are passed on, ask for; null where they name none. The traverse does not tell treads apart. */
  readonly tyres: VehicleValues['tyrePattern'] | null;
}

export interface Classification {
  readonly id: ClassificationId;
  /** Who published it, under what title, when and where; the year is null where none was seen. */
  readonly source: {
    readonly organisation: string;
    readonly title: string;
    readonly year: number | null;
    readonly address: string;
  };
  /** Easiest first. */
  readonly levels: readonly Level[];
}

const ALL: Readonly<Record<ClassificationId, Classification>> = {
  australia: AUSTRALIA,
  'south africa': SOUTH_AFRICA,
};

export function classificationOf(id: ClassificationId): Classification {
  return ALL[id];
}

/** `level` counts from 1, the easiest. */
export function levelName(id: ClassificationId, level: number): string {
  return say.grading.levels[id][level - 1];
}
