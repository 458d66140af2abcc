import { choice, number } from '../field.ts';
import type { FieldTable, Values } from '../field.ts';
import type { Feature } from './feature.ts';
import type { Hows } from './measure.ts';
import type { Photo } from './photo.ts';
import type { Surface } from './surface.ts';
import { say } from '../words/words.ts';

/** The reference plane of a stretch of ground, as read at the place. Unknown is null, never zero. */
export interface Plane {
  /** Along the recorded direction, climbing positive. */
  readonly slopeRad: number | null;
  /** Across, left side high positive. */
  readonly camberRad: number | null;
}

/** The range that a measured slope or camber must lie in. */
export const planeFields = {
  slopeRad: number(say.terrainFields.plane.slopeRad, 'angle', -1.05, 1.05),
  camberRad: number(say.terrainFields.plane.camberRad, 'angle', -0.8, 0.8),
} satisfies FieldTable;

const BOUNDS = ['open', 'bank', 'trees', 'rock', 'drop'] as const;

/** How much room there is, measured from the main line. */
export const corridorFields = {
  leftM: number(say.terrainFields.corridor.leftM, 'length', 0.3, 30),
  leftBound: choice(say.terrainFields.corridor.leftBound, BOUNDS),
  rightM: number(say.terrainFields.corridor.rightM, 'length', 0.3, 30),
  rightBound: choice(say.terrainFields.corridor.rightBound, BOUNDS),
  headroomM: number(say.terrainFields.corridor.headroomM, 'length', 1, 30),
};

export type Corridor = Values<typeof corridorFields>;

/** A stretch of ground that lines run over, in the obstacle frame (origin at the pin, x along the recorded direction, y left). */
export interface Stretch {
  /** Along the line, half of it either side of the pin. */
  readonly lengthM: number;
  readonly plane: Plane;
  readonly surface: Surface;
  readonly corridor: Corridor;
  readonly features: readonly Feature[];
  /** How values were got, keyed by their path in this record: `plane.slopeRad`, `features.0.depthM`, `corridor.leftM`. */
  readonly hows: Hows;
}

export const stretchFields = {
  lengthM: number(say.terrainFields.stretch.lengthM, 'length', 2, 200),
} satisfies FieldTable;

/** The main line, or the same ground with the vehicle moved sideways. */
export interface SameGroundLine {
  readonly id: string;
  readonly kind: 'main' | 'offset';
  readonly name: string;
  /** Sideways from the main line, left positive; 0 for the main line. */
  readonly offsetM: number;
}

/** A way over other ground. */
export interface Bypass {
  readonly id: string;
  readonly kind: 'bypass';
  readonly name: string;
  readonly stretch: Stretch;
  /** [lng, lat] pairs in the recorded direction, as drawn on the map; may be empty. */
  readonly path: readonly (readonly [number, number])[];
}

export type Line = SameGroundLine | Bypass;

export interface Obstacle {
  readonly id: string;
  readonly name: string;
  /** Name of the preset it was made from. */
  readonly preset: string;
  readonly lng: number;
  readonly lat: number;
  /** Along the track from its first point. */
  readonly stationM: number;
  readonly stretch: Stretch;
  /** The main line first; at least one. */
  readonly lines: readonly Line[];
  readonly note: string;
  readonly photos: readonly Photo[];
}

/** Which way the convoy travels the track. */
export type Direction = 'as recorded' | 'reversed';

/** The ground that a line runs over. */
export function stretchOf(obstacle: Obstacle, line: Line): Stretch {
  return line.kind === 'bypass' ? line.stretch : obstacle.stretch;
}
