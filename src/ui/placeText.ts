import type { System } from '../units.ts';
import { shown } from '../units.ts';

/** A place along a line, from the pin: `at the pin`, `1.20 m past the pin`. */
export function placeWords(stationM: number, system: System): string {
  if (Math.abs(stationM) < 0.005) return 'at the pin';
  return `${shown(Math.abs(stationM), 'length', system)} ${stationM < 0 ? 'before' : 'past'} the pin`;
}

const WINDS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** The nearest of the eight winds to a bearing, clockwise from north. */
export function windOf(bearingRad: number): string {
  const eighth = Math.round(bearingRad / (Math.PI / 4));
  return WINDS[((eighth % 8) + 8) % 8];
}
