import type { Vehicle } from '../vehicle/vehicle.ts';
import { open } from './trip.svelte.ts';

/** The one vehicle that map and list of obstacles are looked at for; all of them until one is chosen. */
class Alone {
  #id = $state.raw<string | null>(null);

  /** Null for all, and where the chosen one has left the convoy. */
  get vehicle(): Vehicle | null {
    return open.now.vehicles.find(({ id }) => id === this.#id) ?? null;
  }

  choose(vehicleId: string | null): void {
    this.#id = vehicleId;
  }
}

export const alone = new Alone();
