import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { fromShown, unitLabel } from '../units.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import { n, stroke, text } from './ink.ts';
import { say } from '../words/words.ts';

/** The line up the page, stations rising with travel: what plan and sweep share so that they read side by side. */
export interface Upright {
  readonly fromM: number;
  readonly toM: number;
  readonly pxPerM: number;
  readonly topPx: number;
  readonly heightPx: number;
  readonly yOf: (stationM: number) => number;
  readonly stationOf: (y: number) => number;
}

/** Room for the stations at the left, pixels. */
export const STATIONS_PX = 34;
/** Room for the words above and below, pixels. */
const ABOVE_PX = 40;
const BELOW_PX = 18;
/** Line drawn beyond where mid-wheelbase starts and ends, metres: most of a bonnet. */
const BEYOND_M = 1.2;
const MARK_APART_PX = 34;
/** Ground drawn beyond the corridor, and the most that is drawn to a side, metres. */
const BESIDE_M = 0.35;
const MOST_SIDE_M = 3.4;

/** Ground across, of the plan: right edge to left edge, metres left of the main line. */
export function acrossOf({ corridor }: Stretch): readonly [rightM: number, leftM: number] {
  const side = (roomM: number) => Math.min(MOST_SIDE_M, roomM + BESIDE_M);
  return [-side(corridor.rightM), side(corridor.leftM)];
}

/** The greatest true scale at which the plan fits into a box. */
export function uprightOf(stretch: Stretch, v: VehicleValues, widthPx: number, mostPx: number): Upright {
  const reach = (stretch.lengthM + v.wheelbaseM) / 2 + BEYOND_M;
  const [right, left] = acrossOf(stretch);
  const pxPerM = Math.min(
    (widthPx - STATIONS_PX) / (left - right),
    (mostPx - ABOVE_PX - BELOW_PX) / (2 * reach),
  );
  return {
    fromM: -reach,
    toM: reach,
    pxPerM,
    topPx: ABOVE_PX,
    heightPx: 2 * reach * pxPerM + ABOVE_PX + BELOW_PX,
    yOf: (stationM) => ABOVE_PX + (reach - stationM) * pxPerM,
    stationOf: (y) => Math.max(-reach, Math.min(reach, reach - (y - ABOVE_PX) / pxPerM)),
  };
}

/** Marks of whole metres (feet) along the left edge. */
export function stationMarks({ fromM, toM, pxPerM, yOf }: Upright, x: number, system: System): string {
  const unitM = fromShown(1, 'length', system);
  const steps = [1, 2, 5, 10, 20, 50];
  const step = steps.find((one) => one * unitM * pxPerM >= MARK_APART_PX) ?? 100;
  const marks: string[] = [];
  for (let k = Math.ceil(fromM / unitM / step) * step; k * unitM <= toM; k += step) {
    const y = yOf(k * unitM);
    const words =
      k === 0
        ? say.drawing.pin
        : `${String(k).replace('-', '−')}${k > 0 && k + step > toM / unitM ? ` ${unitLabel('length', system)}` : ''}`;
    marks.push(
      stroke('tick', [
        [x, y],
        [x + 5, y],
      ]),
      text('station', [x + 8, y + 4], words, 'start'),
    );
  }
  return marks.join('');
}

export function drawn(
  className: string,
  widthPx: number,
  heightPx: number,
  parts: readonly string[],
): string {
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing ${className}" viewBox="0 0 ${n(widthPx)} ${n(heightPx)}" ` +
    `width="${n(widthPx)}" height="${n(heightPx)}" fill="none" stroke="none">${parts.join('')}</svg>`
  );
}
