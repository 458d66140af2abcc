import { G_MPS2 } from '../gravity.ts';
import type { Ground } from '../../terrain/ground.ts';
import type { Aids } from '../../vehicle/aids.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import { loadedMassHeightM, totalMassKg } from '../../vehicle/vehicle.ts';
import type { Corners } from './loads.ts';
import { axleLoadsN, leanTransferN, splitN, twistMomentNm } from './loads.ts';
import type { Stance } from './stance.ts';

/**
 * Roll stiffness of an axle: springs of k = m (2πf)² a corner (ride frequency, f = (1/2π) √(k/m)) in series with the
 * tyres, at the arm t/2, and the anti-roll bar beside the springs: K = ½ t² k.
 */
function rollStiffness(
  cornerKg: number,
  rideHz: number,
  trackWidthM: number,
  tyreNPerM: number,
  barNmPerRad: number,
): number {
  const spring = cornerKg * (2 * Math.PI * rideHz) ** 2 + (2 * barNmPerRad) / trackWidthM ** 2;
  return (trackWidthM ** 2 / 2) * ((spring * tyreNPerM) / (spring + tyreNPerM));
}

/** Wheel loads normal to the plane, newtons: slope over the axles, lean and twist over the sides; none below zero. */
export function wheelLoads(values: VehicleValues, aids: Aids, ground: Ground, stance: Stance): Corners {
  const massKg = totalMassKg(values);
  const h = loadedMassHeightM(values);
  const { frontTrackWidthM: tf, rearTrackWidthM: tr } = values;
  const { frontN, rearN } = axleLoadsN({
    weightN: massKg * G_MPS2,
    wheelbaseM: values.wheelbaseM,
    behindFrontM: values.wheelbaseM * (1 - values.frontShare),
    massHeightM: h,
    slopeRad: ground.slopeRad + stance.pitchRad,
  });
  const bar = (nmPerRad: number) => (aids.barsDisconnected ? 0 : nmPerRad);
  const kf = rollStiffness(
    (massKg * values.frontShare) / 2,
    values.frontRideHz,
    tf,
    values.tyreStiffnessNPerM,
    bar(values.frontAntiRollNmPerRad),
  );
  const kr = rollStiffness(
    (massKg * (1 - values.frontShare)) / 2,
    values.rearRideHz,
    tr,
    values.tyreStiffnessNPerM,
    bar(values.rearAntiRollNmPerRad),
  );
  const twistNm = twistMomentNm(stance.twistRad, kf, kr);
  const lean = ground.camberRad + stance.rollRad;
  const front = Math.max(0, frontN);
  const rear = Math.max(0, rearN);
  const [frontLeft, frontRight] = splitN(front, leanTransferN(front, h, tf, lean) - twistNm / tf);
  const [rearLeft, rearRight] = splitN(rear, leanTransferN(rear, h, tr, lean) + twistNm / tr);
  return { frontLeft, frontRight, rearLeft, rearRight };
}
