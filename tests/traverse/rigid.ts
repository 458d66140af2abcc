import type { Chassis } from '../../src/traverse/chassis.ts';
import { effortAlong } from '../../src/traverse/effort.ts';
import { Equilibrium } from '../../src/traverse/equilibrium.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import { emptyRecord } from '../../src/traverse/record.ts';
import type { Drive } from '../../src/traverse/traction.ts';
import { boundWheels, greatestDrive, noBounds, noDrive } from '../../src/traverse/traction.ts';
import type { Up } from '../../src/traverse/up.ts';
import type { Axle } from '../../src/vehicle/axle.ts';
import type { Driveline } from '../../src/vehicle/driveline.ts';
import { flatGround } from './scenes.ts';

/** The vehicle of a textbook: rigid, its wheels without mass. */
export interface Book {
  readonly massKg: number;
  readonly wheelbaseM: number;
  /** Centre of mass behind the front axle. */
  readonly behindFrontM: number;
  readonly heightM: number;
  readonly trackWidthM?: number;
}

const STIFF = 1e9;

export function rigidChassis(book: Book): Chassis {
  const { massKg, wheelbaseM, behindFrontM, heightM, trackWidthM = 1.5 } = book;
  const axle = (share: number): Axle => ({
    beam: false,
    trackWidthM,
    springNPerM: STIFF,
    couplingNPerM: 0,
    bumpM: 1,
    droopM: 1,
    bumpStopNPerM: STIFF,
    droopStopNPerM: STIFF,
    unsprungKg: 0,
    wheelKg: (massKg * share) / 2,
    hubHeightM: 0,
    rollCentreM: 0,
  });
  const massXM = wheelbaseM / 2 - behindFrontM;
  return {
    front: axle(1 - behindFrontM / wheelbaseM),
    rear: axle(behindFrontM / wheelbaseM),
    tyre: { radiusM: 0, sectionM: 0, stiffnessNPerM: STIFF, sidewallM: 0 },
    wheelbaseM,
    massKg,
    massXM,
    massHeightM: heightM,
    sprungKg: massKg,
    sprungXM: massXM,
    sprungHeightM: heightM,
    floorHeightM: 1,
    floorM2: wheelbaseM * trackWidthM,
  };
}

export const climbing = (rad: number): Up => ({ x: Math.sin(rad), y: 0, z: Math.cos(rad) });
export const cambered = (rad: number): Up => ({ x: 0, y: Math.sin(rad), z: Math.cos(rad) });

const LOCKED: Driveline = {
  front: Infinity,
  rear: Infinity,
  centre: Infinity,
  rearReach: 1,
  brakeShare: 0,
  engineLeaves: 1,
  forceN: Infinity,
};
/** How a vehicle is driven: both wheels of a driven axle, or all four, turn as one. */
export const DRIVES = {
  front: { ...LOCKED, rear: 0 },
  rear: { ...LOCKED, front: 0 },
  four: LOCKED,
  'four, open centre': { ...LOCKED, centre: 1 },
} as const satisfies Record<string, Driveline>;

/** Axle loads on a slope, newtons. */
export function axleLoadsN(book: Book, rad: number): { front: number; rear: number } {
  const body = new Equilibrium(rigidChassis(book), climbing(rad));
  body.solve([0, 0, 0, 0]);
  return { front: body.loadN[0] + body.loadN[1], rear: body.loadN[2] + body.loadN[3] };
}

/** Greatest push along a slope over weight. */
export function pushOnSlope(book: Book, line: Driveline, mu: number, rad: number): number {
  const body = new Equilibrium(rigidChassis(book), climbing(rad));
  if (body.solve([0, 0, 0, 0]) !== 0) return -Infinity;
  return driven(line, body.loadN, [0, 0, 0, 0], mu, mu).alongN / (book.massKg * G_MPS2);
}

/** The greatest drive of four wheels that bear these loads where the ground climbs so. */
export function driven(
  line: Driveline,
  loadN: ArrayLike<number>,
  climbTan: ArrayLike<number>,
  peak: number,
  sliding: number,
): Drive {
  const bounds = noBounds(1);
  const drive = noDrive();
  boundWheels(loadN, climbTan, peak, sliding, 0, bounds);
  greatestDrive(line, bounds, 0, drive);
  return drive;
}

/** What slope and rolling resistance ask over weight, as the traverse reckons it at one station. */
export function askOnSlope(book: Book, rad: number, rollingResistance: number): number {
  const chassis = rigidChassis(book);
  const up = climbing(rad);
  const body = new Equilibrium(chassis, up);
  const record = emptyRecord(1);
  body.solve([0, 0, 0, 0]);
  record.loadN.set(body.loadN);
  const ground = { ...flatGround, slopeRad: rad, rollingResistance };
  return effortAlong(record, chassis, DRIVES.four, ground, up).ask[0];
}

/** The largest number in (0, `most`) for which `holds`, by halving. */
export function largest(most: number, holds: (value: number) => boolean): number {
  let low = 0;
  let high = most;
  for (let n = 0; n < 50; n++) {
    const mid = (low + high) / 2;
    if (holds(mid)) low = mid;
    else high = mid;
  }
  return low;
}

/** Steepest slope that the vehicle climbs with rolling resistance `f`. */
export function steepestRad(book: Book, line: Driveline, mu: number, f = 0): number {
  return largest(1.4, (rad) => pushOnSlope(book, line, mu, rad) >= Math.sin(rad) + f * Math.cos(rad));
}
