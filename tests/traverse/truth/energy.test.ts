import { describe, expect, it } from 'vitest';
import type { Chassis } from '../../../src/traverse/chassis.ts';
import { chassisOf } from '../../../src/traverse/chassis.ts';
import { Equilibrium } from '../../../src/traverse/equilibrium.ts';
import { G_MPS2 } from '../../../src/traverse/gravity.ts';
import type { Up } from '../../../src/traverse/up.ts';
import { conjugateGradient } from '../minimiser.ts';
import { randomScene, seeded } from '../scenes.ts';

/**
 * Source: the principle of minimum potential energy, found by a general-purpose optimiser (npm fmin 0.0.4, conjugate
 * gradients) that knows nothing of wheels or active sets. The energy is written here a second time, from springs, stops,
 * tyres and heights. Its gradient is taken from it by central differences, which are exact for quadratic pieces.
 */
function energyJ(c: Chassis, up: Up, ground: readonly number[], pose: readonly number[]): number {
  const [Z, P, Q, ...w] = pose;
  const g = G_MPS2;
  const onFront = 0.5 + c.sprungXM / c.wheelbaseM;
  let E = 0;
  let hub = 0;
  let rollCentre = 0;
  for (const [end, axle, share] of [
    [0, c.front, onFront],
    [2, c.rear, 1 - onFront],
  ] as const) {
    const x = (end === 0 ? 1 : -1) * (c.wheelbaseM / 2);
    const t = axle.trackWidthM;
    const travel = [0, 1].map(
      (side) => w[end + side] - (Z - x * P + (side === 0 ? t : -t) * 0.5 * Q) - axle.hubHeightM,
    );
    for (const [side, a] of travel.entries()) {
      const S0 = (axle.wheelKg - axle.unsprungKg) * g;
      E += S0 * a + 0.5 * axle.springNPerM * a * a;
      if (a > axle.bumpM) E += 0.5 * axle.bumpStopNPerM * (a - axle.bumpM) ** 2;
      if (a < -axle.droopM) E += 0.5 * axle.droopStopNPerM * (a + axle.droopM) ** 2;
      const squash = ground[end + side] + c.tyre.radiusM - w[end + side];
      if (squash > 0) E += 0.5 * c.tyre.stiffnessNPerM * squash * squash;
      E += axle.unsprungKg * g * up.z * w[end + side];
    }
    E += 0.5 * axle.couplingNPerM * (travel[0] - travel[1]) ** 2;
    // The body and the unsprung masses pulled sideways, and leaning with the axle about the roll centre.
    const lean = (w[end] - w[end + 1]) / t;
    const carried = c.sprungKg * share;
    E -= g * up.y * (carried * axle.rollCentreM + 2 * axle.unsprungKg * axle.hubHeightM) * lean;
    E -= 0.5 * carried * g * up.z * axle.rollCentreM * lean * lean;
    hub += share * axle.hubHeightM;
    rollCentre += share * axle.rollCentreM;
  }
  const above = c.sprungHeightM - rollCentre;
  E += c.sprungKg * g * up.z * (Z - c.sprungXM * P);
  E += c.massKg * g * up.x * c.massHeightM * P - c.sprungKg * g * up.y * above * Q;
  E -= 0.5 * c.sprungKg * g * up.z * ((c.sprungHeightM - hub) * P * P + above * Q * Q);
  return E;
}

/** Each unknown in a unit in which the energy is about equally stiff. */
const UNIT = [1, 0.5, 1, 0.4, 0.4, 0.4, 0.4];
const STEP = 1e-6;

function leastEnergy(c: Chassis, up: Up, ground: readonly number[], start: readonly number[]): number[] {
  const scale = 1 / (c.massKg * G_MPS2);
  const at = (x: readonly number[]) =>
    energyJ(
      c,
      up,
      ground,
      x.map((value, i) => value * UNIT[i]),
    ) * scale;
  const f = (x: number[], gradient: number[]): number => {
    for (let i = 0; i < x.length; i++) {
      const more = x.map((value, j) => (i === j ? value + STEP : value));
      const less = x.map((value, j) => (i === j ? value - STEP : value));
      gradient[i] = (at(more) - at(less)) / (2 * STEP);
    }
    return at(x);
  };
  let x = start.map((value, i) => value / UNIT[i]);
  for (let round = 0; round < 4; round++) x = conjugateGradient(f, x, { maxIterations: 2000 }).x;
  return x.map((value, i) => value * UNIT[i]);
}

describe('the equilibrium is the pose of least potential energy', () => {
  for (let seed = 1; seed <= 40; seed++)
    it(`scene ${seed}`, ({ skip }) => {
      const next = seeded(seed);
      const between = (low: number, high: number) => low + (high - low) * next();
      const c = chassisOf(randomScene(seed).values, { airedDown: false, barsDisconnected: false });
      const x = between(-0.3, 0.3);
      const y = between(-0.2, 0.2);
      const up = { x, y, z: Math.sqrt(1 - x * x - y * y) };
      const ground = [0, 1, 2, 3].map(() => between(-0.2, 0.2));
      const body = new Equilibrium(c, up);
      if (body.solve(ground) !== 0) skip('tips: there is no least energy');
      const pose = [body.heaveM, body.pitch, body.roll, ...body.hubM];
      const least = leastEnergy(
        c,
        up,
        ground,
        pose.map((value) => value + between(-0.02, 0.02)),
      );
      const weightN = c.massKg * G_MPS2;
      for (let i = 0; i < 4; i++) {
        const squash = ground[i] + c.tyre.radiusM - least[3 + i];
        const loadN = Math.max(0, squash) * c.tyre.stiffnessNPerM;
        // Tolerance: 0.1 % of weight, what conjugate gradients leave over at the stops' stiffness.
        expect(Math.abs(loadN - body.loadN[i]) / weightN).toBeLessThan(1e-3);
      }
    });
});
