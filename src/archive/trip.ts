import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import type { Track, Waypoint } from '../route/track.ts';
import type { HeldGrip } from '../terrain/surface.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** One outing: a route, what lies in the way, and who goes. The one thing that is saved, opened, undone. */
export interface Trip {
  readonly id: string;
  readonly name: string;
  /** When and where the convoy meets, who leads; free text. */
  readonly note: string;
  /** On which the convoy talks, as it is to be read out; empty where none is agreed. */
  readonly radioChannel: string;
  readonly direction: Direction;
  readonly track: Track | null;
  readonly waypoints: readonly Waypoint[];
  /** In the order of the recorded track. */
  readonly obstacles: readonly Obstacle[];
  /** Kinds of ground that are held slipperier than printed, everywhere in the trip. */
  readonly heldGrips: readonly HeldGrip[];
  /** In convoy order. */
  readonly vehicles: readonly Vehicle[];
}
