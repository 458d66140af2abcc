import type { Part, UndersidePoint } from '../vehicle/body.ts';
import { PARTS } from '../vehicle/body.ts';
import type { Chassis } from './chassis.ts';
import type { TraverseRecord } from './record.ts';
import type { Relief } from './relief.ts';

/** Stations from one look at the underside to the next: its points are further apart than that. */
const STRIDE = 2;

/** The least gap of each part of the underside over all stations. */
export interface Gap {
  readonly part: Part;
  /** Ground to underside; negative where it touches, metres. */
  readonly gapM: number;
  /** Where on the ground, metres from the pin. */
  readonly stationM: number;
  /** How far left of the vehicle's middle. */
  readonly yM: number;
}

/**
 * A point of the body at (x, y, z) at rest stands at Z − x P + y Q + z √(1 − P² − Q²), moved forward by z P and right by
 * z Q; one of a beam axle moves with the line through its two wheel centres. P and Q are small, so what they do to x and
 * y themselves is neglected (3 % of x at 14°).
 */
export function gaps(
  record: TraverseRecord,
  chassis: Chassis,
  points: readonly UndersidePoint[],
  relief: Relief,
  offsetM: number,
): Gap[] {
  const found = PARTS.map((part) => ({ part, gapM: Infinity, stationM: NaN, yM: 0 }));
  const upright = record.pitch.map((P, n) =>
    Math.sqrt(Math.max(0, 1 - P * P - record.roll[n] * record.roll[n])),
  );
  for (const point of points) {
    const least = found[PARTS.indexOf(point.part)];
    const axle = point.axle === 'front' ? chassis.front : point.axle === 'rear' ? chassis.rear : null;
    const left = point.axle === 'front' ? 0 : 2;
    for (let n = 0; n < record.length; n += STRIDE) {
      if (record.standing[n] !== 0) continue;
      let z: number;
      let x = record.stationM[n] + point.xM;
      let y = offsetM + point.yM;
      if (axle !== null) {
        const hubL = record.hubM[4 * n + left];
        const hubR = record.hubM[4 * n + left + 1];
        const lean = (hubL - hubR) / axle.trackWidthM;
        z = (hubL + hubR) / 2 + lean * point.yM + point.zM - axle.hubHeightM;
      } else {
        const P = record.pitch[n];
        const Q = record.roll[n];
        z = record.heaveM[n] - point.xM * P + point.yM * Q + point.zM * upright[n];
        x += point.zM * P;
        y -= point.zM * Q;
      }
      const gapM = z - relief.highestNear(x, y);
      if (gapM >= least.gapM) continue;
      least.gapM = gapM;
      least.stationM = x;
      least.yM = point.yM;
    }
  }
  return found;
}
