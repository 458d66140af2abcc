import type { Pin } from './obstacleEdit.ts';

/** The place on the track that the leader is pointing at, on the map or on the long section; an obstacle is pinned there. */
class Spot {
  /** Picked, and kept until another is. */
  picked = $state.raw<Pin | null>(null);
  /** Under the pointer just now. */
  passing = $state.raw<Pin | null>(null);
  /** The leader is being asked what lies at the picked place. */
  asking = $state(false);

  pick(pin: Pin | null): void {
    this.picked = pin;
    this.asking = false;
  }
}

export const spot = new Spot();
