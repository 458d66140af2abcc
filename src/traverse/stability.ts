import type { Chassis } from './chassis.ts';
import type { Equilibrium } from './equilibrium.ts';
import { solverOf } from './equilibrium.ts';
import type { Stations, TraverseRecord } from './record.ts';
import { allOf } from './record.ts';
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
 * As a tangent it compares stations without trigonometry; beyond 90° it does not matter. Each edge's at a station is written
 * into `tan`; the centre of mass is that in `mass`.
 */
function tilts(record: TraverseRecord, chassis: Chassis, up: Up, n: number, treads: 0 | 1): void {
  for (let i = 0; i < 4; i++) {
    contactX[i] = wheelX(chassis, i);
    contactY[i] = wheelY(chassis, i) + treads * inward(record, n, i);
  }
  for (let edge = 0; edge < 4; edge++) {
    const { from, to } = EDGES[edge];
    const dx = mass[0] - contactX[from];
    const dy = mass[1] - contactY[from];
    const dz = mass[2] - record.bottomM[4 * n + from];
    const ax = contactX[to] - contactX[from];
    const ay = contactY[to] - contactY[from];
    const az = record.bottomM[4 * n + to] - record.bottomM[4 * n + from];

    const aa = ax * ax + ay * ay + az * az;
    const cross = ax * (dy * up.z - dz * up.y) + ay * (dz * up.x - dx * up.z) + az * (dx * up.y - dy * up.x);
    const along = (dx * ax + dy * ay + dz * az) * (up.x * ax + up.y * ay + up.z * az);
    const over = aa * (dx * up.x + dy * up.y + dz * up.z) - along;
    tan[edge] = (cross * Math.sqrt(aa)) / Math.max(over, 1e-9 * aa);
  }
}

/** Kept from call to call: where the wheels bear, and the tilt that is left over each edge. */
const contactX = new Float64Array(4);
const contactY = new Float64Array(4);
const tan = new Float64Array(4);

/** Kept from call to call: where the centre of mass is, x, y, z. */
const mass = new Float64Array(3);

/** Where the centre of mass is at a station, into `mass`. */
function massAt(record: TraverseRecord, chassis: Chassis, n: number): void {
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
  mass[0] = mx / chassis.massKg;
  mass[1] = my / chassis.massKg;
  mass[2] = mz / chassis.massKg;
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

/** Where an edge is worst, the body rigid. */
interface WorstTilt {
  readonly edge: number;
  readonly n: number;
  /** With each tread borne where it bears, and by its middle. */
  readonly tan: number;
  readonly middleTan: number;
}

/**
 * The least tilt left over each edge along the whole record, the suspension's further lean counted. The solver takes
 * treads by their middle, so what their edges cost the rigid body comes off its answer. Of two opposite edges the one
 * that is further from going over is told without the lean; so are both where `before`, what was found in another plane,
 * has less. Only the stations of `over` count, all of them unless told otherwise.
 */
export function tipMargins(
  record: TraverseRecord,
  chassis: Chassis,
  up: Up,
  before: readonly TipMargin[] = [],
  over: Stations = allOf(record),
): TipMargin[] {
  const { worst, tipsAt } = worstTilts(record, chassis, up, over);
  const told = worst.map((tilt, edge): TipMargin | WorstTilt => {
    const { name } = EDGES[edge];
    if (tipsAt[edge] >= 0)
      return { edge: name, marginRad: -TIPPED_RAD, stationM: record.stationM[tipsAt[edge]] };
    if (tilt.tan === Infinity) return { edge: name, marginRad: NaN, stationM: record.stationM[over.from] };
    massAt(record, chassis, tilt.n);
    tilts(record, chassis, up, tilt.n, 0);
    tilt.middleTan = tan[edge];
    return tilt;
  });
  for (let i = 0; i < told.length; i += 2) {
    const pair = rigid(told[i + 1]) < rigid(told[i]) ? [i + 1, i] : [i, i + 1];
    const ofPair = ({ edge }: TipMargin) => edge === EDGES[i].name || edge === EDGES[i + 1].name;
    let least = before.filter(ofPair).reduce(lesser, Infinity);
    for (const edge of pair) {
      const worst = told[edge];
      const margin = 'tan' in worst ? leaned(record, chassis, up, worst, least) : worst;
      told[edge] = margin;
      least = lesser(least, margin);
    }
  }
  return told as TipMargin[];
}

/**
 * Where each edge is worst, the body rigid, and the first station at which the vehicle goes over it; −1 for none. On its own,
 * as browsers take long to make one function of this and of the solver's runs fast.
 */
function worstTilts(record: TraverseRecord, chassis: Chassis, up: Up, { from, to }: Stations) {
  const worst = EDGES.map((_, edge) => ({ edge, n: from, tan: Infinity, middleTan: Infinity }));
  const tipsAt = EDGES.map(() => -1);
  for (let n = from; n < to; n++) {
    const standing = record.standing[n];
    if (standing !== 0) {
      if (tipsAt[standing - 1] < 0) tipsAt[standing - 1] = n;
      continue;
    }
    if (n > from && record.repeats[n] === 1) continue;
    massAt(record, chassis, n);
    tilts(record, chassis, up, n, 1);
    for (const tilt of worst) {
      if (tan[tilt.edge] >= tilt.tan) continue;
      tilt.tan = tan[tilt.edge];
      tilt.n = n;
    }
  }
  return { worst, tipsAt };
}

function lesser(least: number, { marginRad }: TipMargin): number {
  return marginRad < least ? marginRad : least;
}

function rigid(told: TipMargin | WorstTilt): number {
  return 'tan' in told ? told.tan : -Infinity;
}

/** The tilt left at the worst station of an edge; that of the rigid body where the lean leaves more than `enoughRad` of it. */
function leaned(
  record: TraverseRecord,
  chassis: Chassis,
  up: Up,
  { edge, n, tan, middleTan }: WorstTilt,
  enoughRad: number,
): TipMargin {
  const { bottomM, climbTan } = record;
  const treadsRad = Math.max(0, Math.atan(middleTan) - Math.atan(tan));
  const { name } = EDGES[edge];
  const stationM = record.stationM[n];
  const enoughTan = enoughRad + treadsRad < 1.3 ? Math.tan(enoughRad + treadsRad) : Infinity;
  if (
    enoughTan > 0 &&
    enoughTan < middleTan &&
    new Tilting(chassis, up, bottomM, climbTan, edge, 4 * n).stands(enoughTan)
  )
    return { edge: name, marginRad: Math.atan(tan), stationM };
  const leanedTo = leanedTan(chassis, up, bottomM, climbTan, edge, middleTan, 4 * n);
  return { edge: name, marginRad: Math.atan(leanedTo) - treadsRad, stationM };
}

/** Steps that the rigid body's tilt is cut into, of which the last that stands is told: 0.02° of a usual 45°. */
const STEPS = 2048;

/** Part of the way to where the load of the higher wheels would end that is gone at once: a body leans ever faster. */
const ALMOST = 0.9;

/** Directions in which gravity is turned for each edge. */
const OVER = [
  { x: 0, y: -1 },
  { x: 0, y: 1 },
  { x: 1, y: 0 },
  { x: -1, y: 0 },
] as const;

/** One station with gravity turned towards an edge; its wheels' ground and climb are those from index `at` on. */
class Tilting {
  readonly #body: Equilibrium;
  readonly #up: Up;
  readonly #ground: ArrayLike<number>;
  readonly #climb: ArrayLike<number>;
  readonly #edge: number;
  readonly #at: number;
  readonly #towards: Up;

  constructor(
    chassis: Chassis,
    up: Up,
    ground: ArrayLike<number>,
    climb: ArrayLike<number>,
    edge: number,
    at: number,
  ) {
    this.#body = solverOf(chassis);
    this.#body.forget();
    this.#up = up;
    this.#ground = ground;
    this.#climb = climb;
    this.#edge = edge;
    this.#at = at;
    // The upward vertical turned towards the side that rises.
    const dot = OVER[edge].x * up.x + OVER[edge].y * up.y;
    const x = OVER[edge].x - dot * up.x;
    const y = OVER[edge].y - dot * up.y;
    const z = -dot * up.z;
    const size = Math.sqrt(x * x + y * y + z * z);
    this.#towards = { x: x / size, y: y / size, z: z / size };
  }

  /** Load of the two wheels that lift when it tips, newtons; of the last tilt at which it stood. */
  higherN(): number {
    const { loadN } = this.#body;
    const { from, to } = EDGES[this.#edge];
    return loadN[0] + loadN[1] + loadN[2] + loadN[3] - loadN[from] - loadN[to];
  }

  /** Whether it stands with gravity turned by an angle of this tangent. */
  stands(tan: number): boolean {
    const scale = 1 / Math.sqrt(1 + tan * tan);
    this.#body.lean({
      x: (this.#up.x + tan * this.#towards.x) * scale,
      y: (this.#up.y + tan * this.#towards.y) * scale,
      z: (this.#up.z + tan * this.#towards.z) * scale,
    });
    return this.#body.solve(this.#ground, this.#climb, this.#at) === 0;
  }
}

/**
 * The body leans further as it is tilted, so the rigid answer is too high; it bounds the tilt from above. Gravity is turned
 * until the solver finds no equilibrium: each time most of the way to where the load of the higher wheels comes to nothing
 * if it goes on as it went, or half way where that fell over. What is told still stands.
 */
export function leanedTan(
  chassis: Chassis,
  up: Up,
  ground: ArrayLike<number>,
  climb: ArrayLike<number>,
  edge: number,
  rigidTan: number,
  at = 0,
): number {
  if (rigidTan <= 0) return rigidTan;
  const tilting = new Tilting(chassis, up, ground, climb, edge, at);
  if (!tilting.stands(0)) return 0;
  const stepTan = Math.min(rigidTan, 4) / STEPS;
  let stands = 0;
  let falls = STEPS;
  let loadN = tilting.higherN();
  let next = STEPS / 2;
  while (falls - stands > 1) {
    if (tilting.stands(next * stepTan)) {
      const beforeN = loadN;
      loadN = tilting.higherN();
      const left = (loadN * (next - stands)) / (beforeN - loadN);
      stands = next;
      const likely = stands + Math.max(1, Math.floor(ALMOST * left));
      next = left > 0 && likely < falls ? likely : (stands + falls) >> 1;
    } else {
      falls = next;
      next = (stands + falls) >> 1;
    }
  }
  return stands * stepTan;
}
