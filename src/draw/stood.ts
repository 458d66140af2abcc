import type { Along } from '../traverse/along.ts';
import { G_MPS2 } from '../traverse/gravity.ts';
import type { End } from '../vehicle/axle.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import { say } from '../words/words.ts';

/** A vehicle at one station of its traverse, as worked out. */
export interface Stood {
  readonly values: VehicleValues;
  readonly along: Along;
  /** Index into the stations of its record. */
  readonly n: number;
}

export interface WheelPose {
  /** Left of the vehicle's middle. */
  readonly yM: number;
  readonly hubM: number;
  /** From the wheel centre down to the tyre's underside: less than its radius where the tyre is squashed. */
  readonly downM: number;
  /** Air under a wheel that hangs; 0 where it stands. */
  readonly airM: number;
  /** What a driver would call its travel, empty where there is some left both ways. */
  readonly travel: string;
}

/** One axle with the body over it, in the plane's frame. */
export interface AxlePose {
  readonly end: End;
  /** Along the line from the pin. */
  readonly xM: number;
  readonly left: WheelPose;
  readonly right: WheelPose;
  /** Tangent of the lean of axle, of wheels and of body, left side high positive. */
  readonly axleTan: number;
  readonly wheelTan: number;
  readonly bodyTan: number;
  /** Height over the plane of what was level ground under the body's middle at rest. */
  readonly bodyM: number;
}

/** Travel this near to a stop counts as on it, metres: what a driver would not see. */
const AT_STOP_M = 0.003;

export function stands({ along, n }: Stood): boolean {
  return along.record.standing[n] === 0;
}

export function stationOf({ along, n }: Stood): number {
  return along.record.stationM[n];
}

export function axlePose({ values, along, n }: Stood, end: End): AxlePose {
  const { record, chassis } = along;
  const axle = chassis[end];
  const first = 4 * n + (end === 'front' ? 0 : 2);
  const aheadM = (end === 'front' ? 1 : -1) * (chassis.wheelbaseM / 2);
  const wheel = (i: number, sign: 1 | -1): WheelPose => {
    const hubM = record.hubM[i];
    const over = hubM - record.bottomM[i];
    const radiusM = values.tyreDiameterM / 2;
    const travelM = record.travelM[i];
    return {
      yM: (sign * axle.trackWidthM) / 2,
      hubM,
      downM: Math.min(radiusM, Math.max(0, over)),
      airM: record.loadN[i] > 0 ? 0 : Math.max(0, over - radiusM),
      travel:
        travelM >= axle.bumpM - AT_STOP_M
          ? say.drawing.onStop
          : travelM <= AT_STOP_M - axle.droopM
            ? say.drawing.hangs
            : '',
    };
  };
  const left = wheel(first, 1);
  const right = wheel(first + 1, -1);
  const axleTan = (left.hubM - right.hubM) / axle.trackWidthM;
  const bodyTan = record.roll[n];
  return {
    end,
    xM: record.stationM[n] + aheadM,
    left,
    right,
    axleTan,
    wheelTan: axle.beam ? axleTan : bodyTan,
    bodyTan,
    bodyM: record.heaveM[n] - aheadM * record.pitch[n],
  };
}

/** One wheel's load, as a bar is drawn of it. */
export interface WheelLoad {
  readonly loadN: number;
  /** Of the longest bar, which is `FULL_BAR` of the vehicle's weight. */
  readonly share: number;
  readonly restShare: number;
  /** Said in place of a load; empty where the wheel carries. */
  readonly state: '' | 'in the air' | 'not known';
}

/** Part of the weight that fills a bar: more than one wheel carries short of tipping. */
const FULL_BAR = 0.6;

/** The four wheels, in their order. */
export function wheelLoads(stood: Stood): WheelLoad[] {
  const { chassis, record } = stood.along;
  const kg = chassis.massKg;
  const g = G_MPS2;
  return [0, 1, 2, 3].map((i) => {
    const axle = i < 2 ? chassis.front : chassis.rear;
    const loadN = record.loadN[4 * stood.n + i];
    const known = stands(stood);
    return {
      loadN,
      share: known ? Math.min(1, loadN / (kg * g * FULL_BAR)) : 0,
      restShare: axle.wheelKg / (kg * FULL_BAR),
      state: known ? (loadN > 0 ? '' : 'in the air') : 'not known',
    };
  });
}
