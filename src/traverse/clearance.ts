import type { Part, UndersidePoint } from '../vehicle/body.ts';
import { PARTS, underside } from '../vehicle/body.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Chassis } from './chassis.ts';
import type { Crest } from './crest.ts';
import type { Stations, TraverseRecord } from './record.ts';
import { allOf } from './record.ts';
import type { Relief } from './relief.ts';

/** Stations from one look at the underside to the next: its points are further apart than that. */
const STRIDE = 2;

/** Stations from which it pays to find the highest ground under the vehicle first. */
const MANY = 40;

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

type LeastGap = { -readonly [K in keyof Gap]: Gap[K] };

/** What points of the underside lie in, from mid-wheelbase and the ground at rest. */
interface Box {
  readonly fromXM: number;
  readonly toXM: number;
  readonly fromYM: number;
  readonly toYM: number;
  readonly lowestM: number;
  readonly highestM: number;
}

/** The points of one part of the underside, and the box that they lie in. All move with the body, or with one axle. */
export interface UnderPart extends Box {
  readonly part: Part;
  readonly axle: UndersidePoint['axle'];
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  readonly zM: Float64Array;
}

const known = new WeakMap<Chassis, readonly UnderPart[]>();

/** The underside of a vehicle as it sits on a chassis; the same chassis, asked again, has the same one. */
export function undersideOn(chassis: Chassis, values: VehicleValues): readonly UnderPart[] {
  const found = known.get(chassis);
  if (found) return found;
  const all = underside(values, chassis.front.hubHeightM, chassis.rear.hubHeightM);
  const parts = PARTS.map((part) => partOf(part, all)).filter(({ xM }) => xM.length > 0);
  known.set(chassis, parts);
  return parts;
}

function partOf(part: Part, all: readonly UndersidePoint[]): UnderPart {
  const points = all.filter((point) => point.part === part);
  const [xM, yM, zM] = (['xM', 'yM', 'zM'] as const).map((name) =>
    Float64Array.from(points, (point) => point[name]),
  );
  return {
    part,
    axle: points.length > 0 ? points[0].axle : null,
    xM,
    yM,
    zM,
    fromXM: Math.min(...xM),
    toXM: Math.max(...xM),
    fromYM: Math.min(...yM),
    toYM: Math.max(...yM),
    lowestM: Math.min(...zM),
    highestM: Math.max(...zM),
  };
}

/** How one part of the underside stands at a station: what its points' places become. */
interface Pose {
  /** Mid-wheelbase from the pin, and the greater of pitch and roll. */
  xM: number;
  turn: number;
  upM: number;
  /** Fall forward, rise to the left, and height over the pose's plane of what stood one metre up. */
  fall: number;
  rise: number;
  upright: number;
  /** How far forward and right that is moved. */
  forward: number;
  right: number;
}

/**
 * A point of the body at (x, y, z) at rest stands at Z − x P + y Q + z √(1 − P² − Q²), moved forward by z P and right by
 * z Q; one of a beam axle moves with the line through its two wheel centres. P and Q are small, so what they do to x and
 * y themselves is neglected (3 % of x at 14°). A part is not looked at where even its lowest point is further above the
 * highest ground under it than the least gap that it has already, nor where it has the same ground under it and stands on
 * it as at the look before. `before` are the gaps of the same parts on another record, of which the lesser ones stay. Looked
 * at are the stations of `over`, all of them unless told otherwise.
 */
export function gaps(
  record: TraverseRecord,
  chassis: Chassis,
  parts: readonly UnderPart[],
  relief: Relief,
  offsetM: number,
  before?: readonly Gap[],
  over: Stations = allOf(record),
): Gap[] {
  const found = parts.map(({ part }, i) => {
    const { gapM, stationM, yM } = before?.[i] ?? { gapM: Infinity, stationM: NaN, yM: 0 };
    return { part, gapM, stationM, yM };
  });
  if (parts.length > 0)
    lookAlong(
      record,
      chassis,
      parts,
      crestsUnder(over, parts, relief, offsetM),
      relief,
      offsetM,
      found,
      over,
    );
  return found;
}

/** The highest ground under the whole underside and under each part; null where it does not pay to find it. */
interface Crests {
  readonly whole: Box & { readonly crest: Crest };
  readonly each: readonly Crest[];
}

function crestsUnder(
  { from, to }: Stations,
  parts: readonly UnderPart[],
  relief: Relief,
  offsetM: number,
): Crests | null {
  if (to - from < MANY) return null;
  const whole = boxAbout(parts);
  return {
    whole: { ...whole, crest: crestUnder(whole, relief, offsetM) },
    each: parts.map((part) => crestUnder(part, relief, offsetM)),
  };
}

function lookAlong(
  record: TraverseRecord,
  chassis: Chassis,
  parts: readonly UnderPart[],
  crests: Crests | null,
  relief: Relief,
  offsetM: number,
  least: readonly LeastGap[],
  { from, to }: Stations,
): void {
  const body = noPose();
  const axle = noPose();
  for (let n = from; n < to; n += STRIDE) {
    if (record.standing[n] !== 0) continue;
    poseBody(body, record, n);
    if (
      crests !== null &&
      n - from >= STRIDE &&
      repeatsLook(record, n) &&
      staysLevel(crests.whole, body, relief, record.stationM[n - STRIDE])
    )
      continue;
    for (let i = 0; i < parts.length; i++) {
      const part = parts[i];
      const pose = part.axle === null ? body : poseAxle(axle, record, chassis, part.axle, n);
      look(part, pose, relief, offsetM, crests === null ? null : crests.each[i], least[i]);
    }
  }
}

/** Whether the ground under the vehicle is level from where it was at the look before. */
function staysLevel(
  { crest, fromXM, toXM, highestM }: Crests['whole'],
  { xM, turn }: Pose,
  relief: Relief,
  beforeM: number,
): boolean {
  if (turn * highestM > LEANS_ASIDE_M) return false;
  const from = relief.sampleBefore(beforeM + fromXM - LEANS_ASIDE_M);
  return crest.isLevel(from, relief.sampleBefore(xM + toXM + LEANS_ASIDE_M) + 1);
}

function noPose(): Pose {
  return { xM: NaN, turn: NaN, upM: NaN, fall: NaN, rise: NaN, upright: 1, forward: 0, right: 0 };
}

const boxes = new WeakMap<readonly Box[], Box>();

/** What some parts lie in together; the same parts, asked again, in the same one. */
function boxAbout(parts: readonly Box[]): Box {
  const found = boxes.get(parts);
  if (found) return found;
  const least = (of: (part: Box) => number) => Math.min(...parts.map(of));
  const most = (of: (part: Box) => number) => Math.max(...parts.map(of));
  const box = {
    fromXM: least(({ fromXM }) => fromXM),
    toXM: most(({ toXM }) => toXM),
    fromYM: least(({ fromYM }) => fromYM),
    toYM: most(({ toYM }) => toYM),
    lowestM: least(({ lowestM }) => lowestM),
    highestM: most(({ highestM }) => highestM),
  };
  boxes.set(parts, box);
  return box;
}

/** How far pitch and roll may move a part along or across and it is still reckoned with, metres. */
const LEANS_ASIDE_M = 0.2;

/** Lines to which a crest is widened, so that many parts and offsets share one. */
const SHARED_LINES = 4;

function crestUnder(part: Box, relief: Relief, offsetM: number): Crest {
  const reach = LEANS_ASIDE_M + relief.acrossM;
  const first = relief.lineNear(offsetM + part.fromYM - reach);
  const last = relief.lineNear(offsetM + part.toYM + reach);
  return relief.crest(
    Math.floor(first / SHARED_LINES) * SHARED_LINES,
    Math.ceil(last / SHARED_LINES) * SHARED_LINES,
  );
}

/** Whether the vehicle stands as at the look before. */
function repeatsLook({ repeats }: TraverseRecord, n: number): boolean {
  for (let k = n - STRIDE + 1; k <= n; k++) if (repeats[k] !== 1) return false;
  return true;
}

function poseBody(pose: Pose, record: TraverseRecord, n: number): void {
  const P = record.pitch[n];
  const Q = record.roll[n];
  pose.xM = record.stationM[n];
  pose.turn = Math.max(Math.abs(P), Math.abs(Q));
  pose.upM = record.heaveM[n];
  pose.fall = P;
  pose.rise = Q;
  pose.upright = Math.sqrt(Math.max(0, 1 - P * P - Q * Q));
  pose.forward = P;
  pose.right = Q;
}

function poseAxle(
  pose: Pose,
  record: TraverseRecord,
  chassis: Chassis,
  end: 'front' | 'rear',
  n: number,
): Pose {
  const left = 4 * n + (end === 'front' ? 0 : 2);
  const axle = end === 'front' ? chassis.front : chassis.rear;
  const hubL = record.hubM[left];
  const hubR = record.hubM[left + 1];
  pose.xM = record.stationM[n];
  pose.turn = Math.max(Math.abs(record.pitch[n]), Math.abs(record.roll[n]));
  pose.upM = (hubL + hubR) / 2 - axle.hubHeightM;
  pose.fall = 0;
  pose.rise = (hubL - hubR) / axle.trackWidthM;
  return pose;
}

/** A height that no point of a part is below. */
function leastZ({ upM, fall, rise, upright }: Pose, part: UnderPart): number {
  const bow = Math.max(part.fromXM * fall, part.toXM * fall);
  const list = Math.min(part.fromYM * rise, part.toYM * rise);
  return upM - bow + list + part.lowestM * upright;
}

/** The gap under each point of a part, kept where it is the least so far. */
function look(
  part: UnderPart,
  pose: Pose,
  relief: Relief,
  offsetM: number,
  crest: Crest | null,
  least: LeastGap,
): void {
  let topM = relief.topM;
  if (crest !== null && pose.turn * part.highestM <= LEANS_ASIDE_M) {
    const from = relief.sampleBefore(pose.xM + part.fromXM - LEANS_ASIDE_M);
    const to = relief.sampleBefore(pose.xM + part.toXM + LEANS_ASIDE_M) + 1;
    topM = crest.highest(from, to);
    if (leastZ(pose, part) - topM >= least.gapM) return;
  }
  const { xM, yM, zM } = part;
  const { upM, fall, rise, upright, forward, right } = pose;
  for (let i = 0; i < xM.length; i++) {
    const z = upM - xM[i] * fall + yM[i] * rise + zM[i] * upright;
    if (z - topM >= least.gapM) continue;
    const atX = pose.xM + xM[i] + zM[i] * forward;
    const gapM = z - relief.highestNear(atX, offsetM + yM[i] - zM[i] * right);
    if (gapM >= least.gapM) continue;
    least.gapM = gapM;
    least.stationM = atX;
    least.yM = yM[i];
  }
}
