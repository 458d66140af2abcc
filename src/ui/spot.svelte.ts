import type { Pin } from './obstacleEdit.ts';
import { SCOUT } from './place.ts';
import { pinAt, pinFor } from './trackEdit.ts';
import { open } from './trip.svelte.ts';
import { where } from './where.svelte.ts';

/** The place that the leader is pointing at, on the map or on the long section; an obstacle is pinned there. */
class Spot {
  /** Picked, and kept until another is. */
  picked = $state.raw<Pin | null>(null);
  /** Station under the pointer just now. */
  passingM = $state.raw<number | null>(null);
  /** The leader is being asked what lies at the picked place. */
  asking = $state(false);

  pick(pin: Pin | null): void {
    this.picked = pin;
    this.asking = false;
  }

  /** Picks where someone pointed on the map, or the place of the track nearest to it, and goes where it can be pinned. */
  pointNear(lng: number, lat: number): void {
    this.pick(pinFor(open.now, lng, lat));
    where.go(SCOUT);
  }

  pointAt(stationM: number): void {
    if (open.now.track === null) return;
    this.pick(pinAt(open.now.track, stationM));
    where.go(SCOUT);
  }

  pass(stationM: number | null): void {
    this.passingM = stationM;
  }
}

export const spot = new Spot();
