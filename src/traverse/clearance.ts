import type { Part, UndersidePoint } from '../vehicle/body.ts';
import { PARTS, underside } from '../vehicle/body.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Chassis } from './chassis.ts';
import type { Crest } from './crest.ts';
import type { TraverseRecord } from './record.ts';
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

/** What points of the underside lie in, from mid-wheelbase and the ground at rest. */
interface Box {
  readonly fromXM: number;
  readonly toXM: number;
  readonly fromYM: number;
  readonly toYM: number;
  readonly lowestM: number;
  readonly highestM: number;
}

/** The points of one part of the underside, and the box that they lie in. */
export interface UnderPart extends Box {
  readonly part: Part;
  readonly points: readonly UndersidePoint[];
}

const known = new WeakMap<Chassis, readonly UnderPart[]>();

/** The underside of a vehicle as it sits on a chassis; the same chassis, asked again, has the same one. */
export function undersideOn(chassis: Chassis, values: VehicleValues): readonly UnderPart[] {
  const found = known.get(chassis);
  if (found) return found;
  const all = underside(values, chassis.front.hubHeightM, chassis.rear.hubHeightM);
  const parts = PARTS.map((part) => partOf(part, all)).filter(({ points }) => points.length > 0);
  known.set(chassis, parts);
  return parts;
}

function partOf(part: Part, all: readonly UndersidePoint[]): UnderPart {
  const points = all.filter((point) => point.part === part);
  return {
    part,
    points,
    fromXM: Math.min(...points.map(({ xM }) => xM)),
    toXM: Math.max(...points.map(({ xM }) => xM)),
    fromYM: Math.min(...points.map(({ yM }) => yM)),
    toYM: Math.max(...points.map(({ yM }) => yM)),
    lowestM: Math.min(...points.map(({ zM }) => zM)),
    highestM: Math.max(...points.map(({ zM }) => zM)),
  };
}

/**
 * A point of the body at (x, y, z) at rest stands at Z − x P + y Q + z √(1 − P² − Q²), moved forward by z P and right by
 * z Q; one of a beam axle moves with the line through its two wheel centres. P and Q are small, so what they do to x and
 * y themselves is neglected (3 % of x at 14°). A part is not looked at where even its lowest point is further above the
 * highest ground under it than the least gap that it has already, nor where it has the same ground under it and stands on
 * it as at the look before.
 */
export function gaps(
  record: TraverseRecord,
  chassis: Chassis,
  parts: readonly UnderPart[],
  relief: Relief,
  offsetM: number,
): Gap[] {
  const found = parts.map(({ part }) => ({ part, gapM: Infinity, stationM: NaN, yM: 0 }));
  if (parts.length === 0) return found;
  const many = record.length >= MANY;
  const whole = boxAbout(parts);
  const under = many ? crestUnder(whole, relief, offsetM) : null;
  const crests = many ? parts.map((part) => crestUnder(part, relief, offsetM)) : null;
  for (let n = 0; n < record.length; n += STRIDE) {
    if (record.standing[n] !== 0) continue;
    const x = record.stationM[n];
    const turn = Math.max(Math.abs(record.pitch[n]), Math.abs(record.roll[n]));
    if (under !== null && repeatsLook(record, n) && turn * whole.highestM <= LEANS_ASIDE_M) {
      const from = relief.sampleBefore(record.stationM[n - STRIDE] + whole.fromXM - LEANS_ASIDE_M);
      if (under.isLevel(from, relief.sampleBefore(x + whole.toXM + LEANS_ASIDE_M) + 1)) continue;
    }
    for (let i = 0; i < parts.length; i++) {
      const part = parts[i];
      if (crests !== null && turn * part.highestM <= LEANS_ASIDE_M) {
        const from = relief.sampleBefore(x + part.fromXM - LEANS_ASIDE_M);
        const to = relief.sampleBefore(x + part.toXM + LEANS_ASIDE_M) + 1;
        if (leastZ(record, chassis, part, n) - crests[i].highest(from, to) >= found[i].gapM) continue;
      }
      for (const point of part.points) look(record, chassis, point, relief, offsetM, n, found[i]);
    }
  }
  return found;
}

function boxAbout(parts: readonly Box[]): Box {
  const least = (of: (part: Box) => number) => Math.min(...parts.map(of));
  const most = (of: (part: Box) => number) => Math.max(...parts.map(of));
  return {
    fromXM: least(({ fromXM }) => fromXM),
    toXM: most(({ toXM }) => toXM),
    fromYM: least(({ fromYM }) => fromYM),
    toYM: most(({ toYM }) => toYM),
    lowestM: least(({ lowestM }) => lowestM),
    highestM: most(({ highestM }) => highestM),
  };
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
  if (n < STRIDE) return false;
  for (let k = n - STRIDE + 1; k <= n; k++) if (repeats[k] !== 1) return false;
  return true;
}

/** The lean of a point's axle at a station, and the height of the middle of its wheel centres. */
function axleAt(record: TraverseRecord, chassis: Chassis, end: 'front' | 'rear', n: number) {
  const left = 4 * n + (end === 'front' ? 0 : 2);
  const axle = end === 'front' ? chassis.front : chassis.rear;
  const hubL = record.hubM[left];
  const hubR = record.hubM[left + 1];
  return { lean: (hubL - hubR) / axle.trackWidthM, upM: (hubL + hubR) / 2 - axle.hubHeightM };
}

/** A height that no point of a part is below at a station. */
function leastZ(record: TraverseRecord, chassis: Chassis, part: UnderPart, n: number): number {
  const [{ axle }] = part.points;
  if (axle !== null) {
    const { lean, upM } = axleAt(record, chassis, axle, n);
    return upM + part.lowestM + Math.min(lean * part.fromYM, lean * part.toYM);
  }
  const P = record.pitch[n];
  const Q = record.roll[n];
  const bow = Math.max(part.fromXM * P, part.toXM * P);
  const list = Math.min(part.fromYM * Q, part.toYM * Q);
  return record.heaveM[n] - bow + list + part.lowestM * upright(P, Q);
}

function upright(P: number, Q: number): number {
  return Math.sqrt(Math.max(0, 1 - P * P - Q * Q));
}

/** The gap under one point at one station, kept where it is the least so far. */
function look(
  record: TraverseRecord,
  chassis: Chassis,
  point: UndersidePoint,
  relief: Relief,
  offsetM: number,
  n: number,
  least: { -readonly [K in keyof Gap]: Gap[K] },
): void {
  let z: number;
  let x = record.stationM[n] + point.xM;
  let y = offsetM + point.yM;
  if (point.axle !== null) {
    const { lean, upM } = axleAt(record, chassis, point.axle, n);
    z = upM + lean * point.yM + point.zM;
  } else {
    const P = record.pitch[n];
    const Q = record.roll[n];
    z = record.heaveM[n] - point.xM * P + point.yM * Q + point.zM * upright(P, Q);
    x += point.zM * P;
    y -= point.zM * Q;
  }
  const gapM = z - relief.highestNear(x, y);
  if (gapM >= least.gapM) return;
  least.gapM = gapM;
  least.stationM = x;
  least.yM = point.yM;
}
