import type { ElevationGrid } from '../route/elevation.ts';
import type { SlopeProfile } from '../route/slope.ts';
import type { Track, Waypoint } from '../route/track.ts';
import type { Line, Obstacle } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import type { Background } from './background.ts';

/** What is written beside a line. */
export interface LineWords {
  /** Which line it is: `left 0.40 m`. */
  readonly call: string;
  /** What there is to say of it: the track widths that it is open to, or the verdict of the one vehicle; may be empty. */
  readonly note: string;
}

/** How one vehicle fares at an obstacle. */
export interface Fare {
  /** The line that it takes; null where it goes on none. */
  readonly line: Line | null;
  /** The verdict in a word; empty where it goes without more ado. */
  readonly word: string;
  /** The same for those who hear the map. */
  readonly spoken: string;
  /** The mark of the verdict as SVG text. */
  readonly mark: string;
  /** The fill of the verdict, a class of the style sheet. */
  readonly fill: string;
}

/** The map for the whole convoy, or for one vehicle alone. */
export interface Chooser {
  readonly vehicles: readonly { readonly id: string; readonly name: string }[];
  /** Null for all. */
  readonly vehicleId: string | null;
  /** How the one fares, by obstacle id; empty for all, and where it is not worked out yet. */
  readonly fares: ReadonlyMap<string, Fare>;
  readonly onChoose: (vehicleId: string | null) => void;
}

/** A path that is being drawn, point by point. */
export interface Drawing {
  readonly name: string;
  readonly points: readonly (readonly [lng: number, lat: number])[];
  readonly onPoint: (lng: number, lat: number) => void;
  readonly onUndo: () => void;
  readonly onDone: () => void;
  readonly onCancel: () => void;
}

/** Where the person with this device is. */
export interface Here {
  readonly lng: number;
  readonly lat: number;
  /** They are within this of the place, as the device states it. */
  readonly accuracyM: number;
  /** Too long ago to be where they are now. */
  readonly isOld: boolean;
}

/** What a map shows, and whom it tells. */
export interface Subject {
  readonly track: Track | null;
  /** Null until it is known. */
  readonly profile: SlopeProfile | null;
  readonly waypoints?: readonly Waypoint[];
  /** In order of travel, which numbers them. */
  readonly obstacles?: readonly Obstacle[];
  readonly selectedId?: string | null;
  /** Station under the pointer, here or on the long section. */
  readonly hoverM?: number | null;
  /** Station that was picked, to stay. */
  readonly pickedM?: number | null;
  /** Null while it is not looked for, or not known. */
  readonly here?: Here | null;
  /** The ground, where the user owns a model of it. */
  readonly grid?: ElevationGrid | null;
  /** What the user laid under it. */
  readonly background?: Background | null;
  /** The convoy travels against the recorded direction. */
  readonly reversed?: boolean;
  readonly system: System;
  /** What to write beside lines. */
  readonly lineWords?: ReadonlyMap<Line, LineWords>;
  readonly chooser?: Chooser | null;
  /** While a path is being drawn, to point at a place is to add it. */
  readonly drawing?: Drawing | null;
  /** A place was pointed at: pressed, or by Enter under the cross. */
  readonly onPin: (lng: number, lat: number) => void;
  readonly onSelect: (obstacleId: string) => void;
  readonly onHover: (stationM: number | null) => void;
}
