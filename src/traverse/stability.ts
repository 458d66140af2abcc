import type { Chassis } from './chassis.ts';
import { Equilibrium } from './equilibrium.ts';
import type { TraverseRecord } from './record.ts';
import type { Up } from './up.ts';

/** The four ways over: the two wheels about which it tips, first and second, seen with the outside on the right hand. */
const EDGES = [
  { name: 'left', from: 0, to: 2 },
  { name: 'right', from: 3, to: 1 },
  { name: 'back', from: 2, to: 3 },
  { name: 'forward', from: 1, to: 0 },
] as const;

export type Edge = (typeof EDGES)[number]['name'];

/** The least tilt left before the vehicle goes over an edge, and where. */
export interface TipMargin {
  readonly edge: Edge;
  /** Further tilt that it bears; negative where it goes over. */
  readonly marginRad: number;
  readonly stationM: number;
}

/**
 * Tilt left about the line a through two contacts, body rigid in its present pose. A wheel that bears on the inner edge
 * of its tread, as on a rut's shoulder, gives the shorter lever (`treads` 1; 0 takes the middle of each tread). With d from the line to the centre of
 * mass and u upward, both seen along a, the tilt is the angle from d to u:
 *
 *     tan = a·(d × u) |a| / (|a|² d·u − (d·a) (u·a))
 *
 * As a tangent it compares stations without trigonometry; beyond 90° it does not matter.
 */
function tiltTan(
  record: TraverseRecord,
  chassis: Chassis,
  up: Up,
  n: number,
  edge: number,
  treads: 0 | 1,
): number {
  const { from, to } = EDGES[edge];
  const fromY = wheelY(chassis, from) + treads * inward(record, n, from);
  const toY = wheelY(chassis, to) + treads * inward(record, n, to);
  const P = record.pitch[n];
  const Q = record.roll[n];
  const h = chassis.sprungHeightM;

  let mx = chassis.sprungKg * (chassis.sprungXM + h * P);
  let my = -chassis.sprungKg * h * Q;
  let mz = chassis.sprungKg * (record.heaveM[n] - chassis.sprungXM * P + h);
  for (let i = 0; i < 4; i++) {
    const kg = (i < 2 ? chassis.front : chassis.rear).unsprungKg;
    mx += kg * wheelX(chassis, i);
    my += kg * wheelY(chassis, i);
    mz += kg * record.hubM[4 * n + i];
  }
  const dx = mx / chassis.massKg - wheelX(chassis, from);
  const dy = my / chassis.massKg - fromY;
  const dz = mz / chassis.massKg - record.bottomM[4 * n + from];
  const ax = wheelX(chassis, to) - wheelX(chassis, from);
  const ay = toY - fromY;
  const az = record.bottomM[4 * n + to] - record.bottomM[4 * n + from];

  const aa = ax * ax + ay * ay + az * az;
  const cross = ax * (dy * up.z - dz * up.y) + ay * (dz * up.x - dx * up.z) + az * (dx * up.y - dy * up.x);
  const along = (dx * ax + dy * ay + dz * az) * (up.x * ax + up.y * ay + up.z * az);
  const over = aa * (dx * up.x + dy * up.y + dz * up.z) - along;
  return (cross * Math.sqrt(aa)) / Math.max(over, 1e-9 * aa);
}

/** How far towards the vehicle's middle a wheel bears, left positive; what bears further out is not counted on. */
function inward(record: TraverseRecord, n: number, i: number): number {
  const bearing = record.bearingM[4 * n + i];
  return i % 2 === 0 ? Math.min(0, bearing) : Math.max(0, bearing);
}

function wheelX(chassis: Chassis, i: number): number {
  return ((i < 2 ? 1 : -1) * chassis.wheelbaseM) / 2;
}

function wheelY(chassis: Chassis, i: number): number {
  return ((i % 2 === 0 ? 1 : -1) * (i < 2 ? chassis.front : chassis.rear).trackWidthM) / 2;
}

/** What is said of a tilt where the vehicle has no equilibrium: 5° too much; how much more cannot be told. */
const TIPPED_RAD = Math.PI / 36;

/**
 * The least tilt left over each edge along the whole record, the suspension's further lean counted. The solver takes
 * treads by their middle, so what their edges cost the rigid body comes off its answer.
 */
export function tipMargins(record: TraverseRecord, chassis: Chassis, up: Up): TipMargin[] {
  return EDGES.map(({ name }, edge) => {
    let worst = Infinity;
    let at = 0;
    for (let n = 0; n < record.length; n++) {
      if (record.standing[n] === edge + 1)
        return { edge: name, marginRad: -TIPPED_RAD, stationM: record.stationM[n] };
      if (record.standing[n] !== 0 || (n > 0 && record.repeats[n] === 1)) continue;
      const tan = tiltTan(record, chassis, up, n, edge, 1);
      if (tan >= worst) continue;
      worst = tan;
      at = n;
    }
    if (worst === Infinity) return { edge: name, marginRad: NaN, stationM: record.stationM[0] };
    const ground = record.bottomM.subarray(4 * at, 4 * at + 4);
    const climb = record.climbTan.subarray(4 * at, 4 * at + 4);
    const mid = tiltTan(record, chassis, up, at, edge, 0);
    const leaned = leanedTan(chassis, up, ground, climb, edge, mid);
    const marginRad = Math.atan(leaned) - Math.max(0, Math.atan(mid) - Math.atan(worst));
    return { edge: name, marginRad, stationM: record.stationM[at] };
  });
}

/** Directions in which gravity is turned for each edge. */
const OVER = [
  { x: 0, y: -1 },
  { x: 0, y: 1 },
  { x: 1, y: 0 },
  { x: -1, y: 0 },
] as const;

/**
 * The body leans further as it is tilted, so the rigid answer is too high. Gravity is turned step by step until the
 * solver finds no equilibrium, halving the interval; the rigid answer bounds it from above.
 */
export function leanedTan(
  chassis: Chassis,
  up: Up,
  ground: ArrayLike<number>,
  climb: ArrayLike<number>,
  edge: number,
  rigidTan: number,
): number {
  if (rigidTan <= 0) return rigidTan;
  const body = new Equilibrium(chassis, up);
  // The upward vertical turned towards the side that rises.
  const dot = OVER[edge].x * up.x + OVER[edge].y * up.y;
  const sx = OVER[edge].x - dot * up.x;
  const sy = OVER[edge].y - dot * up.y;
  const sz = -dot * up.z;
  const size = Math.sqrt(sx * sx + sy * sy + sz * sz);
  let stands = 0;
  let falls = Math.min(rigidTan, 4);
  for (let n = 0; n < 14; n++) {
    const tan = (stands + falls) / 2;
    const scale = 1 / Math.sqrt(1 + tan * tan);
    body.lean({
      x: (up.x + (tan * sx) / size) * scale,
      y: (up.y + (tan * sy) / size) * scale,
      z: (up.z + (tan * sz) / size) * scale,
    });
    if (body.solve(ground, climb) === 0) stands = tan;
    else falls = tan;
  }
  return stands;
}
