import { BODY_TO_M, bodyAcross } from './body.ts';
import { heightsAlong } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import { HOUSING_HALF_M } from '../vehicle/assumptions.ts';
import type { End } from '../vehicle/axle.ts';
import { PARTS } from '../vehicle/body.ts';
import type { At, CutFrame } from './cut.ts';
import { cutSizes, cutSvg, frameOf, halfWidthM, UNDER_M } from './cut.ts';
import type { Point } from './ink.ts';
import { dimension, stroke, text } from './ink.ts';
import type { SizeMark } from './sizes.ts';
import type { AxlePose, Stood, WheelPose } from './stood.ts';
import { axlePose, stands } from './stood.ts';
import { say } from '../words/words.ts';

/** What a cut across under one axle is drawn from, seen along the direction of travel. */
export interface AcrossView {
  /** As travelled. */
  readonly stretch: Stretch;
  readonly offsetM: number;
  readonly end: End;
  readonly stood: Stood;
  /** Another vehicle to compare, drawn lighter; null for none. */
  readonly other: Stood | null;
  readonly system: System;
  readonly widthPx: number;
}

/** Frame edges move in steps of this, so that a picture stays where it is while a size is dragged. */
const FRAME_STEP_M = 0.25;
/** Depths of what runs right across are dimensioned beside the vehicle, at this share of the half that is drawn. */
const DEPTHS_AT = 0.72;
/** Ground is drawn with a point every so many pixels: a picture that is redrawn while a hand moves must be light. */
const GROUND_STEP_PX = 2;
/** Its highest and lowest along the whole way, which set a frame that moves in whole steps, are looked for this closely. */
const REACH_STEP_M = 0.15;
/** Gaps up to this are dimensioned; a larger one limits nothing. */
const TOLD_GAP_M = 0.4;

/**
 * Where the parts come to lie: what handles over the drawing are placed by. It is the same under both axles and wherever
 * the vehicle stands on its way, so that the picture holds still while it drives.
 */
export function acrossFrame(view: AcrossView): CutFrame {
  const cut = cutOf(view);
  const widest = Math.max(view.stood.values.widthM, view.other?.values.widthM ?? 0);
  const vehicleM = Math.abs(view.offsetM) + widest / 2 + 0.1;
  const half = Math.max(
    halfWidthM(view.stretch.corridor, 0, widest),
    Math.ceil(vehicleM / FRAME_STEP_M) * FRAME_STEP_M,
  );
  const { highM, lowM, bodyM } = wayReach(view, half);
  const topM = Math.max((bodyM ?? highM) + BODY_TO_M, Math.min(1.4, highM + 0.15));
  return frameOf(
    cut,
    half,
    Math.ceil(topM / FRAME_STEP_M) * FRAME_STEP_M,
    Math.floor((lowM - 0.1) / FRAME_STEP_M) * FRAME_STEP_M,
    half * DEPTHS_AT,
  );
}

/** Highest and lowest that a picture needs of the ground under either axle over the whole way, and the highest of the body; null where it never stands. */
function wayReach(
  { stretch, stood }: AcrossView,
  half: number,
): { readonly highM: number; readonly lowM: number; readonly bodyM: number | null } {
  const { record, chassis } = stood.along;
  const aheadM = chassis.wheelbaseM / 2;
  const last = record.length - 1;
  const fromM = record.stationM[0] - aheadM;
  const wayM = record.stationM[last] + aheadM - fromM;
  const heights = new Float64Array(Math.ceil(wayM / REACH_STEP_M) + 1);
  const ground = { highM: -Infinity, lowM: Infinity };
  for (let yM = -half; yM <= half; yM += REACH_STEP_M) {
    heightsAlong(stretch.features, yM, fromM, REACH_STEP_M, heights);
    for (const heightM of heights) {
      ground.highM = Math.max(ground.highM, heightM);
      ground.lowM = Math.min(ground.lowM, heightM);
    }
  }
  let bodyM: number | null = null;
  for (let n = 0; n <= last; n++)
    if (stands({ ...stood, n }))
      bodyM = Math.max(bodyM ?? -Infinity, record.heaveM[n] + aheadM * Math.abs(record.pitch[n]));
  return { highM: ground.highM, lowM: ground.lowM - UNDER_M, bodyM };
}

/** The sizes that it shows, as recorded. */
export function acrossSizes(view: AcrossView, frame: CutFrame, turned: 1 | -1): SizeMark[] {
  return cutSizes(cutOf(view), frame, turned);
}

function cutOf(view: AcrossView) {
  return { ...view, stationM: axlePose(view.stood, view.end).xM };
}

/**
 * A true-to-scale cut across under one axle as SVG text, with the vehicle in the pose that was worked out: wheels
 * drooped, lifted or on their stops, tyres squashed, body leaning.
 */
export function acrossSvg(view: AcrossView, frame = acrossFrame(view)): string {
  const { at } = frame;
  const other = view.other && stands(view.other) ? posed(view.other, view, at, 'vehicle other') : '';
  const own = stands(view.stood)
    ? posed(view.stood, view, at, 'vehicle') + marks(view, frame)
    : text('tips', at(view.offsetM, 0.6), say.drawing.tipsHere);
  return cutSvg(cutOf(view), frame, 'across', other + own, GROUND_STEP_PX / frame.pxPerM);
}

function posed(stood: Stood, { end, offsetM }: AcrossView, at: At, className: string): string {
  const v = stood.values;
  const pose = axlePose(stood, end);
  const beam = stood.along.chassis[end].beam;
  const bodyCos = 1 / Math.hypot(1, pose.bodyTan);
  /** From the vehicle at rest (y left of its middle, z above level ground) to pixels, moved by the body. */
  const onBody = (y: number, z: number): Point =>
    at(offsetM + y - z * pose.bodyTan, pose.bodyM + y * pose.bodyTan + z * bodyCos);
  const middleM = (pose.left.hubM + pose.right.hubM) / 2;
  /** The same from the line through the wheel centres, z above it. */
  const onAxle = (y: number, z: number): Point =>
    at(offsetM + y - z * pose.axleTan, middleM + y * pose.axleTan + z);

  const hubM = stood.along.chassis[end].hubHeightM;
  const housingM = end === 'front' ? v.frontDifferentialHeightM : v.rearDifferentialHeightM;
  const housingYM = end === 'front' ? v.frontDifferentialYM : v.rearDifferentialYM;
  const on = (y: number, z: number) => (beam ? onAxle(y, z - hubM) : onBody(y, z));
  const touches = stood.along.gapM[PARTS.length * stood.n + PARTS.indexOf(`${end} differential`)] < 0;
  const low = housingM;
  const top = hubM + (hubM - housingM);
  const housing = [
    on(housingYM - HOUSING_HALF_M, low),
    on(housingYM + HOUSING_HALF_M, low),
    on(housingYM + HOUSING_HALF_M, (low + top) / 2),
    on(housingYM + HOUSING_HALF_M / 2, top),
    on(housingYM - HOUSING_HALF_M / 2, top),
    on(housingYM - HOUSING_HALF_M, (low + top) / 2),
  ];
  const { left, right } = pose;
  const hub = ({ yM, hubM: z }: WheelPose) => at(offsetM + yM, z);
  const tube = 0.045;
  const shaft = beam
    ? stroke(
        'axle',
        [onAxle(right.yM, tube), onAxle(left.yM, tube), onAxle(left.yM, -tube), onAxle(right.yM, -tube)],
        true,
      )
    : stroke('shaft', [hub(right), onBody(housingYM, hubM), hub(left)]);
  return (
    `<g class="${className}">${bodyLine(stood, pose, onBody)}${shaft}` +
    tyre(v.tyreSectionM, v.tyreDiameterM / 2, left, pose, offsetM, at) +
    tyre(v.tyreSectionM, v.tyreDiameterM / 2, right, pose, offsetM, at) +
    stroke(touches ? 'housing touches' : 'housing', housing, true) +
    '</g>'
  );
}

function bodyLine({ values }: Stood, pose: AxlePose, on: At): string {
  const inner = Math.max(0.2, pose.left.yM - values.tyreSectionM / 2 - 0.08);
  return bodyAcross(values, inner, BODY_TO_M, on);
}

function tyre(sectionM: number, radiusM: number, wheel: WheelPose, pose: AxlePose, offsetM: number, at: At) {
  const half = sectionM / 2;
  const round = Math.min(0.05, half / 2);
  const on = (y: number, z: number) =>
    at(offsetM + wheel.yM + y - z * pose.wheelTan, wheel.hubM + y * pose.wheelTan + z);
  const low = -wheel.downM;
  return stroke(
    wheel.airM > 0 ? 'tyre lifted' : 'tyre',
    [
      on(-half + round, low),
      on(half - round, low),
      on(half, low + round),
      on(half, radiusM - round),
      on(half - round, radiusM),
      on(-half + round, radiusM),
      on(-half, radiusM - round),
      on(-half, low + round),
    ],
    true,
  );
}

/** Gap under the differential, air under a hanging wheel, travel used up. */
function marks(view: AcrossView, frame: CutFrame): string {
  const { stood, end, offsetM, system } = view;
  const { at } = frame;
  const pose = axlePose(stood, end);
  const { values: v, along, n } = stood;
  const size = (valueM: number) => shown(valueM, 'size', system);
  const wheels = [pose.left, pose.right]
    .map((wheel) => {
      const side = Math.sign(wheel.yM);
      const y = offsetM + wheel.yM;
      const beside = y + side * (v.tyreSectionM / 2 + 0.06);
      const foot = wheel.hubM - v.tyreDiameterM / 2;
      const air =
        wheel.airM > 0.005
          ? dimension(at(beside, foot), at(beside, foot - wheel.airM), size(wheel.airM), -side * 6)
          : '';
      const words = wheel.airM > 0 ? say.drawing.inAir : wheel.travel;
      return air + (words && text('travel', at(y, wheel.hubM + v.tyreDiameterM / 2 + 0.05), words));
    })
    .join('');
  const of = PARTS.length * n + PARTS.indexOf(`${end} differential`);
  const gapM = along.gapM[of];
  if (!(gapM < TOLD_GAP_M)) return wheels;
  const yM = along.gapYM[of];
  const beam = along.chassis[end].beam;
  const middleM = (pose.left.hubM + pose.right.hubM) / 2;
  const heightM = end === 'front' ? v.frontDifferentialHeightM : v.rearDifferentialHeightM;
  const under = beam
    ? middleM + yM * pose.axleTan + heightM - along.chassis[end].hubHeightM
    : pose.bodyM + yM * pose.bodyTan + heightM;
  const y = offsetM + yM;
  const line = dimension(at(y, under), at(y, under - gapM), gapM < 0 ? '' : size(gapM), yM >= 0 ? -7 : 7);
  const touches = gapM < 0 ? touch(view, frame, at(y, under)[0], size(-gapM)) : '';
  return `${wheels}<g class="gap${gapM < 0 ? ' touch' : ''}">${line}${touches}</g>`;
}

/** Half of what the words that a differential touches take, and how far they stay from the lower edge, pixels. */
const TOUCH_PX = { half: 125, up: 25 };

/** That a differential touches, in the ground below it, where no size is written. */
function touch({ end, widthPx }: AcrossView, { heightPx }: CutFrame, x: number, size: string): string {
  const within = Math.max(TOUCH_PX.half, Math.min(widthPx - TOUCH_PX.half, x));
  return text(
    'size',
    [within, heightPx - TOUCH_PX.up],
    say.drawing.partTouches(say.part[`${end} differential`], size),
  );
}
