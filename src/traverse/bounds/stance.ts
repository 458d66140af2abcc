import { heightM } from '../../terrain/feature.ts';
import type { Ground } from '../../terrain/ground.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import type { Corners } from './loads.ts';

/** How far apart the stations of the quick bounds are. */
const STEP_M = 0.1;
/** Where a wheel is tried against the ground: shares of its radius along, of its half section across. */
const ALONG = [-0.8, -0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6, 0.8];
const ACROSS = [-1, 0, 1];

/**
 * One vehicle standing on its four wheels at one station: rigid wheels resting on the ground, the body on the plane
 * through them with half of their twist taken by either axle.
 */
export interface Stance {
  /** Middle of the wheelbase along the line, metres. */
  readonly stationM: number;
  /** Lowest point of each wheel, metres above the reference plane. */
  readonly bottomM: Corners;
  /** Slope of each wheel's way at its contact, tan α, climbing positive. */
  readonly climbTan: Corners;
  /** Cross slope of the ground under each tyre, left side high positive. */
  readonly crossTan: Corners;
  /** Nose up positive, against the reference plane. */
  readonly pitchRad: number;
  /** Left side high positive, against the reference plane. */
  readonly rollRad: number;
  /** Cross slope of the front axle less that of the rear, radians. */
  readonly twistRad: number;
  readonly middleM: number;
}

interface Contact {
  readonly bottomM: number;
  readonly climbTan: number;
  readonly crossTan: number;
}

/** A rigid wheel of radius R and section b at (x, y): bottom at max of z + √(R² − u²) − R over its disc. */
function contact(ground: Ground, x: number, y: number, radiusM: number, sectionM: number): Contact {
  let bottomM = -Infinity;
  let at = 0;
  for (const share of ALONG) {
    const u = share * radiusM;
    const drop = Math.sqrt(radiusM * radiusM - u * u) - radiusM;
    for (const side of ACROSS) {
      const z = heightM(ground.features, x + u, y + (side * sectionM) / 2) + drop;
      if (z > bottomM + 1e-9) {
        bottomM = z;
        at = u;
      }
    }
  }
  const left = heightM(ground.features, x + at, y + sectionM / 2);
  const right = heightM(ground.features, x + at, y - sectionM / 2);
  return {
    bottomM,
    climbTan: at / Math.sqrt(radiusM * radiusM - at * at),
    crossTan: (left - right) / sectionM,
  };
}

function standAt(ground: Ground, values: VehicleValues, offsetM: number, stationM: number): Stance {
  const R = values.tyreDiameterM / 2;
  const front = stationM + values.wheelbaseM / 2;
  const rear = stationM - values.wheelbaseM / 2;
  const at = (x: number, y: number) => contact(ground, x, offsetM + y, R, values.tyreSectionM);
  const frontLeft = at(front, values.frontTrackWidthM / 2);
  const frontRight = at(front, -values.frontTrackWidthM / 2);
  const rearLeft = at(rear, values.rearTrackWidthM / 2);
  const rearRight = at(rear, -values.rearTrackWidthM / 2);
  const frontM = (frontLeft.bottomM + frontRight.bottomM) / 2;
  const rearM = (rearLeft.bottomM + rearRight.bottomM) / 2;
  const frontRoll = Math.atan2(frontLeft.bottomM - frontRight.bottomM, values.frontTrackWidthM);
  const rearRoll = Math.atan2(rearLeft.bottomM - rearRight.bottomM, values.rearTrackWidthM);
  const corners = (of: (c: Contact) => number): Corners => ({
    frontLeft: of(frontLeft),
    frontRight: of(frontRight),
    rearLeft: of(rearLeft),
    rearRight: of(rearRight),
  });
  return {
    stationM,
    bottomM: corners((c) => c.bottomM),
    climbTan: corners((c) => c.climbTan),
    crossTan: corners((c) => c.crossTan),
    pitchRad: Math.atan2(frontM - rearM, values.wheelbaseM),
    rollRad: (frontRoll + rearRoll) / 2,
    twistRad: frontRoll - rearRoll,
    middleM: (frontM + rearM) / 2,
  };
}

/** Stances from before the first wheel meets the stretch until the last one has left it. */
export function stancesAlong(ground: Ground, values: VehicleValues, offsetM: number): Stance[] {
  const reach =
    ground.lengthM / 2 + values.wheelbaseM / 2 + Math.max(values.frontOverhangM, values.rearOverhangM);
  const steps = Math.ceil((2 * reach) / STEP_M);
  return Array.from({ length: steps + 1 }, (_, i) =>
    standAt(ground, values, offsetM, -reach + (i * 2 * reach) / steps),
  );
}
