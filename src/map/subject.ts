import type { ElevationGrid } from '../route/elevation.ts';
import type { SlopeProfile } from '../route/slope.ts';
import type { Track, Waypoint } from '../route/track.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';

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
  /** The ground, where the user owns a model of it. */
  readonly grid?: ElevationGrid | null;
  /** The convoy travels against the recorded direction. */
  readonly reversed?: boolean;
  readonly system: System;
  /** Words to write along lines, by line id: the track widths they are open to. */
  readonly notes?: ReadonlyMap<string, string>;
  /** A place was pointed at: pressed, or by Enter under the cross. */
  readonly onPin: (lng: number, lat: number) => void;
  readonly onSelect: (obstacleId: string) => void;
  readonly onHover: (stationM: number | null) => void;
}
