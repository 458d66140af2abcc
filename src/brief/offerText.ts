import type { Offer } from '../convoy/recovery.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { say } from '../words/words.ts';

/** Who would pull and how, such as `Harrier by winch in 2 parts of rope`. */
export function offerText({ vehicleId, means, tackle }: Offer, vehicles: readonly Vehicle[]): string {
  const name = vehicles.find(({ id }) => id === vehicleId)?.name ?? vehicleId;
  const rigged = tackle === null || tackle.parts === 1 ? '' : say.recovery.inParts(tackle.parts);
  return [name, say.recovery.by[means], rigged].filter(Boolean).join(' ');
}
