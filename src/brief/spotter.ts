import type { Stretch } from '../terrain/obstacle.ts';
import { rad } from '../units.ts';
import { say } from '../words/words.ts';

/** Below these nobody tells high from low by eye. Common practice, no source. */
const LEANS_RAD = rad(2);
const CLIMBS_RAD = rad(3);

/** Clear ground beside a vehicle that one person needs to stand out of its way. Common practice, no source. */
const ROOM_M = 1.5;

/** Where the person stands who guides a vehicle through. */
export interface Spotter {
  /** As the convoy comes to it; null where neither side is safe. */
  readonly side: 'left' | 'right' | null;
  /** Whether there is room abreast of the vehicle, or only past the end of the obstacle. */
  readonly abreast: boolean;
  readonly text: string;
}

/**
 * Outside, on the high side, never downhill and never in line: the side that camber raises, or, where it lies level, the
 * side with more room; never between a vehicle and a drop. `offsetM` left of the main line, `slopeRad` null where not
 * known; all as the convoy comes to it. Common practice, no source.
 */
export function spotterFor(
  { plane, corridor, features }: Stretch,
  slopeRad: number | null,
  offsetM: number,
  vehicleWidthM: number,
): Spotter {
  const sides = (['left', 'right'] as const).map((side) => {
    const left = side === 'left';
    return {
      side,
      roomM: (left ? corridor.leftM - offsetM : corridor.rightM + offsetM) - vehicleWidthM / 2,
      bound: left ? corridor.leftBound : corridor.rightBound,
      high: (left ? 1 : -1) * (plane.camberRad ?? 0) > LEANS_RAD,
      low: (left ? -1 : 1) * (plane.camberRad ?? 0) > LEANS_RAD,
    };
  });
  const safe = sides.filter(({ bound, low }) => bound !== 'drop' && !low);
  const [one] = safe.toSorted((a, b) => Number(b.high) - Number(a.high) || b.roomM - a.roomM);
  const end =
    slopeRad === null || Math.abs(slopeRad) < CLIMBS_RAD
      ? say.driving.wellAhead
      : slopeRad > 0
        ? say.driving.aheadAbove
        : say.driving.behindAbove;
  const dry = features.some(({ kind }) => kind === 'water')
    ? say.driving.outOfWater
    : (place: string) => place;
  if (one === undefined) return { side: null, abreast: false, text: dry(say.driving.noSafeSide(end)) };
  const abreast = one.roomM >= ROOM_M || one.bound === 'open';
  const which = (one.high ? say.driving.highSide : say.driving.side)[one.side];
  const place = abreast ? end : say.driving.pastEnd(end);
  return { side: one.side, abreast, text: dry(`${which}, ${place}`) };
}
