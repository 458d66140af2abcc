import type { System } from '../units.ts';
import { fromShown, shown } from '../units.ts';

/** A length to draw, and what is written at its end. */
export interface ScaleBar {
  readonly lengthPx: number;
  readonly words: string;
  /** Into how many parts of equal length the bar falls. */
  readonly parts: number;
}

const FEET_PER_MILE = 5280;

/** The longest bar of a round length that fits. */
export function scaleBar(metresPerPx: number, mostPx: number, system: System): ScaleBar {
  const mostM = mostPx * metresPerPx;
  const far = system === 'metric' ? mostM >= 1000 : mostM >= fromShown(FEET_PER_MILE / 4, 'length', system);
  const quantity = far ? 'distance' : 'length';
  const oneM = fromShown(1, quantity, system);
  const { value, parts } = roundDown(mostM / oneM);
  const words = shown(value * oneM, quantity, system)
    .replace(/([.,]\d*?)0+(?= )/, '$1')
    .replace(/[.,](?= )/, '');
  return { lengthPx: (value * oneM) / metresPerPx, words, parts };
}

/** The largest of 1, 2, 5 times a power of ten that is not above a number. */
function roundDown(most: number): { value: number; parts: number } {
  const power = 10 ** Math.floor(Math.log10(most));
  const lead = most / power;
  if (lead >= 5) return { value: 5 * power, parts: 5 };
  return lead >= 2 ? { value: 2 * power, parts: 4 } : { value: power, parts: 4 };
}
