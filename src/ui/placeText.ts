import type { System } from '../units.ts';
import { shown } from '../units.ts';
import { say } from '../words/words.ts';

/** A place along a line, from the pin: `at the pin`, `1.20 m past the pin`. */
export function placeWords(stationM: number, system: System): string {
  if (Math.abs(stationM) < 0.005) return say.entry.atPin;
  const distance = shown(Math.abs(stationM), 'length', system);
  return stationM < 0 ? say.entry.beforePin(distance) : say.entry.pastPin(distance);
}

/** The nearest of the eight winds to a bearing, clockwise from north. */
export function windOf(bearingRad: number): string {
  const eighth = Math.round(bearingRad / (Math.PI / 4));
  return say.phoneReading.winds[((eighth % 8) + 8) % 8];
}
