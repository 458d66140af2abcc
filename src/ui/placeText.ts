import type { System } from '../units.ts';
import { shown } from '../units.ts';

/** A place along a line, from the pin: `at the pin`, `1.20 m past the pin`. */
export function placeWords(stationM: number, system: System): string {
  if (Math.abs(stationM) < 0.005) return 'at the pin';
  return `${shown(Math.abs(stationM), 'length', system)} ${stationM < 0 ? 'before' : 'past'} the pin`;
}
