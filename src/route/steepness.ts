import { degrees, rad } from '../units.ts';
import { say } from '../words/words.ts';

/** A class of steepness: how every drawing of the track tells it. Uphill and downhill are alike. */
export interface Steepness {
  /** From this slope up, to the next class. */
  readonly fromRad: number;
  readonly colour: string;
}

/**
 * Six classes of five degrees. The colours are the six-class YlOrBr scheme of C. Brewer and M. Harrower, ColorBrewer
 * 2.0 (2003), sequential and safe for the colour-blind; drawings widen the stroke with the class as well.
 */
export const STEEPNESS: readonly Steepness[] = [
  { fromRad: 0, colour: '#ffffd4' },
  { fromRad: rad(5), colour: '#fee391' },
  { fromRad: rad(10), colour: '#fec44f' },
  { fromRad: rad(15), colour: '#fe9929' },
  { fromRad: rad(20), colour: '#d95f0e' },
  { fromRad: rad(25), colour: '#993404' },
];

/** Index into `STEEPNESS`; -1 where the slope is not known (NaN). */
export function steepnessOf(slopeRad: number): number {
  const steep = Math.abs(slopeRad);
  return STEEPNESS.findLastIndex(({ fromRad }) => steep >= fromRad);
}

/** The bounds of a class in degrees and percent, such as `10–15°` and `18–27 %`. */
export function steepnessText(index: number): { readonly degrees: string; readonly percent: string } {
  const from = STEEPNESS[index].fromRad;
  const to = STEEPNESS[index + 1]?.fromRad;
  const angle = (slopeRad: number) => degrees(slopeRad).toFixed(0);
  const percent = (slopeRad: number) => (100 * Math.tan(slopeRad)).toFixed(0);
  if (to === undefined)
    return {
      degrees: say.elevation.over(`${angle(from)}°`),
      percent: say.elevation.over(`${percent(from)} %`),
    };
  return { degrees: `${angle(from)}–${angle(to)}°`, percent: `${percent(from)}–${percent(to)} %` };
}
