import type { Chassis } from './chassis.ts';
import { G_MPS2 } from './gravity.ts';
import {
  BALANCED,
  FALLING,
  FREE_STEPS,
  GREATEST_TURN,
  LIFTED,
  MOST_NUDGES,
  MOST_STEPS,
  NUDGE,
} from './limits.ts';
import type { Up } from './up.ts';

/** Whether a vehicle stands at a station, or which way it goes over. */
export const STANDINGS = ['stands', 'tips left', 'tips right', 'tips back', 'tips forward'] as const;

/** Index into `STANDINGS`. */
export type Standing = 0 | 1 | 2 | 3 | 4;

const UPRIGHT: Up = { x: 0, y: 0, z: 1 };

/** Contacts straight under the wheel centres. */
const LEVEL = new Float64Array(4);

/** Wheels in the order in which every array of four has them. */
export const WHEELS = ['front left', 'front right', 'rear left', 'rear right'] as const;

/**
 * A vehicle standing on four ground heights, quasi-static, in the plane's frame. Unknown are the body's plane through
 * what was level ground at rest, b(x, y) = Z − x P + y Q (P, Q tangents of pitch and roll; nose down and right side down
 * positive), and the heights w of the four wheel centres. With e the ground under a wheel, R its radius, h₀ the wheel
 * centre's height at rest, a = R sin α how far ahead of the wheel centre the ground touches it, q = (w_left − w_right) / t
 * the lean of an axle:
 *
 *     travel            c = w − b − h₀
 *     tyre              V = k_t max(0, e + R − w)
 *     spring and stops  S = S₀ + k c ± κ (c_left − c_right) + k_b max(0, c − bump) + k_d min(0, c + droop)
 *     wheel             V = S + N,   N = m_u g u_z ∓ G,   G t = Y_s h_r + 2 m_u g u_y h₀ + m_a g u_z h_r q
 *     heave             Σ S = m_s g u_z
 *     pitch             Σ (x S + a V) = m_s g u_z (x_s + (h_s − h₀) P) − m g u_x h
 *     roll              Σ y S = −m_s g (u_z (h_s − h_r) Q + u_y (h_s − h_r))
 *
 * u is the upward vertical. A contact ahead of its wheel centre turns the body through the drive or brake torque that
 * holds the wheel, whatever that torque is. Sideways forces enter the body at the roll centre, height h_r at an axle that
 * carries m_a of the sprung mass (mean of both for the body): the body rolls about it, and it leans with the axle. So G
 * passes the springs by, from the high wheel to the low one. With V = S + N the pitch row has x + a where the kinematics
 * have x. With a = 0 these are the conditions of a minimum of the potential energy, a sum of convex pieces less what the
 * centre of mass gains by moving outboard; where no minimum is left, the vehicle tips.
 *
 * Each wheel's own equation is eliminated exactly: with A the springs' stiffness of an axle (2 × 2) and T that of its
 * tyres, what the body feels is B = A − A (A + T)⁻¹ A. Newton's step on (Z, P, Q) is then exact as long as no wheel
 * lifts, lands, or meets a stop, and the last station's answer is the start.
 *
 * Neglected: the body's foreshortening on the plane (1 − cos: 3 % at 14°); the heave of the centre of mass in the moment
 * of a slope (5 cm on 20° shifts 0.6 % of weight); where across its tread a tyre bears (a shoulder's edge: up to half
 * its section).
 */
export class Equilibrium {
  /** Contact forces normal to the plane, newtons; never negative. */
  readonly loadN = new Float64Array(4);
  /** Heights of the wheel centres, metres. */
  readonly hubM = new Float64Array(4);
  /** Suspension travel from loaded ride height, up positive, metres. */
  readonly travelM = new Float64Array(4);
  /** The pose; not known before the first answer. */
  heaveM = NaN;
  pitch = NaN;
  roll = NaN;

  readonly #x = new Float64Array(4);
  readonly #y = new Float64Array(4);
  readonly #rest = new Float64Array(4);
  readonly #springN0 = new Float64Array(4);
  readonly #spring = new Float64Array(4);
  readonly #coupling = new Float64Array(4);
  readonly #bump = new Float64Array(4);
  readonly #droop = new Float64Array(4);
  readonly #bumpStop = new Float64Array(4);
  readonly #droopStop = new Float64Array(4);
  readonly #unsprungKg = new Float64Array(4);
  /** m_u g u_z ∓ G of each wheel, axle level. */
  readonly #onWheelN = new Float64Array(4);
  /** What G grows by as the axle leans, as a stiffness at the wheels. */
  readonly #lean = new Float64Array(4);
  /** x + a of each wheel. */
  readonly #contactX = new Float64Array(4);
  readonly #tyre: number;
  readonly #radiusM: number;
  readonly #chassis: Chassis;
  readonly #weightN: number;
  #heaveN = NaN;
  #pitchNm = NaN;
  #rollNm = NaN;
  #pitchOutNm = NaN;
  #rollOutNm = NaN;
  #fresh = true;

  /** Out-of-balance at the present guess, and the stiffness of each wheel there. */
  readonly #springN = new Float64Array(4);
  readonly #wheelN = new Float64Array(4);
  readonly #own = new Float64Array(4);
  readonly #touch = new Float64Array(4);
  #gz = NaN;
  #gp = NaN;
  #gq = NaN;
  #off = NaN;
  readonly #step = new Float64Array(7);

  constructor(chassis: Chassis, up: Up = UPRIGHT) {
    this.#chassis = chassis;
    this.#weightN = chassis.massKg * G_MPS2;
    this.#tyre = chassis.tyre.stiffnessNPerM;
    this.#radiusM = chassis.tyre.radiusM;
    for (let i = 0; i < 4; i++) {
      const axle = i < 2 ? chassis.front : chassis.rear;
      this.#x[i] = ((i < 2 ? 1 : -1) * chassis.wheelbaseM) / 2;
      this.#y[i] = ((i % 2 === 0 ? 1 : -1) * axle.trackWidthM) / 2;
      this.#rest[i] = axle.hubHeightM;
      this.#springN0[i] = (axle.wheelKg - axle.unsprungKg) * G_MPS2;
      this.#spring[i] = axle.springNPerM;
      this.#coupling[i] = axle.couplingNPerM;
      this.#bump[i] = axle.bumpM;
      this.#droop[i] = axle.droopM;
      this.#bumpStop[i] = axle.bumpStopNPerM;
      this.#droopStop[i] = axle.droopStopNPerM;
      this.#unsprungKg[i] = axle.unsprungKg;
    }
    this.lean(up);
  }

  /** Turns gravity to a new direction; the pose stays as the next start. */
  lean(up: Up): void {
    const { front, rear, massKg, massHeightM, sprungKg, sprungXM, sprungHeightM } = this.#chassis;
    const sprungOnFront = 0.5 + sprungXM / this.#chassis.wheelbaseM;
    const rollCentreM = sprungOnFront * front.rollCentreM + (1 - sprungOnFront) * rear.rollCentreM;
    this.#heaveN = sprungKg * G_MPS2 * up.z;
    this.#pitchNm = sprungKg * G_MPS2 * up.z * sprungXM - massKg * G_MPS2 * up.x * massHeightM;
    this.#rollNm = sprungKg * G_MPS2 * up.y * (sprungHeightM - rollCentreM);
    const hubHeightM = sprungOnFront * front.hubHeightM + (1 - sprungOnFront) * rear.hubHeightM;
    this.#pitchOutNm = sprungKg * G_MPS2 * up.z * (sprungHeightM - hubHeightM);
    this.#rollOutNm = sprungKg * G_MPS2 * up.z * (sprungHeightM - rollCentreM);
    for (let i = 0; i < 4; i++) {
      const axle = i < 2 ? front : rear;
      const carriedKg = sprungKg * (i < 2 ? sprungOnFront : 1 - sprungOnFront);
      const roundKgM = carriedKg * axle.rollCentreM + 2 * axle.unsprungKg * axle.hubHeightM;
      const round = ((roundKgM * G_MPS2 * up.y) / axle.trackWidthM) * (i % 2 === 0 ? 1 : -1);
      this.#onWheelN[i] = axle.unsprungKg * G_MPS2 * up.z - round;
      this.#lean[i] = (carriedKg * G_MPS2 * up.z * axle.rollCentreM) / axle.trackWidthM ** 2;
    }
  }

  /** Forgets the last station, so that the next solve starts from the plane through its ground. */
  forget(): void {
    this.#fresh = true;
  }

  /**
   * Solves for ground heights under the wheels, metres, and tangents of the climb at their contacts, four of each from
   * index `at` on. Always ends; answers the standing, and leaves pose and loads.
   */
  solve(ground: ArrayLike<number>, climbTan: ArrayLike<number> = LEVEL, at = 0): Standing {
    if (this.#fresh) this.#startOn(ground, at);
    for (let i = 0; i < 4; i++) {
      const t = climbTan[at + i];
      this.#contactX[i] = this.#x[i] + (this.#radiusM * t) / Math.sqrt(1 + t * t);
    }
    const enough = BALANCED * this.#weightN;
    let nudges = 0;
    let firm = false;
    for (let n = 0; n < MOST_STEPS; n++) {
      this.#measure(ground, at);
      const balanced = this.#off <= enough;
      // A step that balances was exact, so that what made it firm still holds.
      if (n === 0 || !balanced) firm = this.#newton();
      if (balanced) {
        if (firm) return 0;
        // Poised on two wheels, as on a knife's edge: it may yet come down on the side towards level.
        if (nudges++ === MOST_NUDGES) return this.#poised();
        this.roll *= NUDGE;
        this.pitch *= NUDGE;
        continue;
      }
      // Whole steps find the answer unless they go in circles between two sets of wheels touching; half steps end that.
      const turn = Math.max(Math.abs(this.#step[1]), Math.abs(this.#step[2]));
      this.#move(Math.min(n < FREE_STEPS || !firm ? 1 : 0.5, GREATEST_TURN / turn));
      if (Math.abs(this.pitch) > FALLING || Math.abs(this.roll) > FALLING) return this.#falls();
    }
    return this.#falls();
  }

  #startOn(e: ArrayLike<number>, at: number): void {
    const { wheelbaseM, front, rear } = this.#chassis;
    const frontM = e[at] + e[at + 1];
    const rearM = e[at + 2] + e[at + 3];
    this.heaveM = (frontM + rearM) / 4;
    this.pitch = (rearM - frontM) / (2 * wheelbaseM);
    this.roll = (e[at] + e[at + 2] - e[at + 1] - e[at + 3]) / (front.trackWidthM + rear.trackWidthM);
    for (let i = 0; i < 4; i++) this.hubM[i] = e[at + i] + this.#rest[i];
    this.#fresh = false;
  }

  /** Forces, out-of-balance and stiffness at the present guess. */
  #measure(e: ArrayLike<number>, at: number): void {
    const { heaveM, pitch, roll } = this;
    let gz = this.#heaveN;
    let gp = -this.#pitchNm - this.#pitchOutNm * pitch;
    let gq = -this.#rollNm - this.#rollOutNm * roll;
    let off = 0;
    for (let i = 0; i < 4; i++)
      this.travelM[i] = this.hubM[i] - (heaveM - this.#x[i] * pitch + this.#y[i] * roll) - this.#rest[i];
    for (let i = 0; i < 4; i++) {
      const c = this.travelM[i];
      const other = this.travelM[i ^ 1];
      let own = this.#spring[i];
      let S = this.#springN0[i] + own * c + this.#coupling[i] * (c - other);
      if (c > this.#bump[i]) {
        S += this.#bumpStop[i] * (c - this.#bump[i]);
        own += this.#bumpStop[i];
      } else if (c < -this.#droop[i]) {
        S += this.#droopStop[i] * (c + this.#droop[i]);
        own += this.#droopStop[i];
      }
      const squash = e[at + i] + this.#radiusM - this.hubM[i];
      const V = squash > 0 ? this.#tyre * squash : 0;
      const N = this.#onWheelN[i] - this.#lean[i] * (this.hubM[i] - this.hubM[i ^ 1]);
      const wheelN = S + N - V;
      this.#own[i] = own;
      this.#touch[i] = squash > 0 ? this.#tyre : 0;
      this.#springN[i] = S;
      this.#wheelN[i] = wheelN;
      this.loadN[i] = V;
      off += Math.abs(wheelN);
      gz -= S;
      gp += this.#x[i] * S + (this.#contactX[i] - this.#x[i]) * V;
      gq -= this.#y[i] * S;
    }
    this.#gz = gz;
    this.#gp = gp;
    this.#gq = gq;
    this.#off = off + Math.abs(gz) + Math.abs(gp) + Math.abs(gq);
  }

  /** Newton's step into `#step` (Z, P, Q, four w); false where the body has no stiffness in some way and was lent it. */
  #newton(): boolean {
    let zz = 0;
    let zp = 0;
    let zq = 0;
    let pz = 0;
    let pp = -this.#pitchOutNm;
    let pq = 0;
    let qz = 0;
    let qp = 0;
    let qq = -this.#rollOutNm;
    let rz = -this.#gz;
    let rp = -this.#gp;
    let rq = -this.#gq;
    for (let i = 0; i < 4; i += 2) {
      const j = i + 1;
      // A = [[aL, −κ], [−κ, aR]] and A + T = [[hL, −m], [−m, hR]] with the axle's lean in T.
      const k = this.#coupling[i];
      const lean = this.#lean[i];
      const aL = this.#own[i] + k;
      const aR = this.#own[j] + k;
      const hL = aL + this.#touch[i] - lean;
      const hR = aR + this.#touch[j] - lean;
      const m = k - lean;
      const det = hL * hR - m * m;
      // A (A + T)⁻¹ by rows, then B = A − A (A + T)⁻¹ A.
      const ll = (aL * hR - k * m) / det;
      const lr = (aL * m - k * hL) / det;
      const rl = (aR * m - k * hR) / det;
      const rr = (aR * hL - k * m) / det;
      const bLL = aL - (ll * aL - lr * k);
      const bLR = -k - (lr * aR - ll * k);
      const bRL = -k - (rl * aL - rr * k);
      const bRR = aR - (rr * aR - rl * k);
      const rL = this.#wheelN[i];
      const rR = this.#wheelN[j];
      const fL = ll * rL + lr * rR;
      const fR = rl * rL + rr * rR;
      const x = this.#x[i];
      const y = this.#y[i];
      const cL = this.#contactX[i];
      const cR = this.#contactX[j];
      // What a heave, a pitch and a roll of the body put on the left and the right spring.
      const zL = bLL + bLR;
      const zR = bRL + bRR;
      const qL = y * (bLL - bLR);
      const qR = y * (bRL - bRR);
      zz += zL + zR;
      zp -= x * (zL + zR);
      zq += qL + qR;
      pz -= cL * zL + cR * zR;
      pp += x * (cL * zL + cR * zR);
      pq -= cL * qL + cR * qR;
      qz += y * (zL - zR);
      qp -= x * y * (zL - zR);
      qq += y * (qL - qR);
      rz -= fL + fR;
      rp += cL * fL + cR * fR - (cL - x) * rL - (cR - x) * rR;
      rq -= y * (fL - fR);
    }

    // Elimination by pivots Z, P, Q; a pivot that is not positive marks a way in which the body falls.
    const least = 1e-9 * (this.#rollOutNm + zz);
    let firm = zz > least;
    if (!firm) zz += this.#weightN;
    const p1 = pz / zz;
    const q1 = qz / zz;
    pp -= p1 * zp;
    pq -= p1 * zq;
    qp -= q1 * zp;
    qq -= q1 * zq;
    rp -= p1 * rz;
    rq -= q1 * rz;
    if (!(pp > least)) {
      firm = false;
      pp = Math.abs(pp) + this.#weightN;
    }
    const q2 = qp / pp;
    qq -= q2 * pq;
    rq -= q2 * rp;
    if (!(qq > least)) {
      firm = false;
      qq = Math.abs(qq) + this.#weightN;
    }
    const dQ = rq / qq;
    const dP = (rp - pq * dQ) / pp;
    const dZ = (rz - zp * dP - zq * dQ) / zz;

    const step = this.#step;
    step[0] = dZ;
    step[1] = dP;
    step[2] = dQ;
    for (let i = 0; i < 4; i += 2) {
      const j = i + 1;
      const k = this.#coupling[i];
      const lean = this.#lean[i];
      const aL = this.#own[i] + k;
      const aR = this.#own[j] + k;
      const hL = aL + this.#touch[i] - lean;
      const hR = aR + this.#touch[j] - lean;
      const m = k - lean;
      const det = hL * hR - m * m;
      const b = dZ - this.#x[i] * dP;
      const bL = b + this.#y[i] * dQ;
      const bR = b + this.#y[j] * dQ;
      const sL = aL * bL - k * bR - this.#wheelN[i];
      const sR = aR * bR - k * bL - this.#wheelN[j];
      step[3 + i] = (hR * sL + m * sR) / det;
      step[3 + j] = (hL * sR + m * sL) / det;
    }
    return firm;
  }

  #move(share: number): void {
    const step = this.#step;
    this.heaveM += share * step[0];
    this.pitch += share * step[1];
    this.roll += share * step[2];
    for (let i = 0; i < 4; i++) this.hubM[i] += share * step[3 + i];
  }

  /** Which way a vehicle goes that is balanced on an edge: over the side or the end that still bears. */
  #poised(): Standing {
    this.#fresh = true;
    const least = LIFTED * this.#weightN;
    const V = this.loadN;
    if (V[0] + V[2] <= least) return 2;
    if (V[1] + V[3] <= least) return 1;
    if (V[0] + V[1] <= least) return 3;
    if (V[2] + V[3] <= least) return 4;
    return this.#falls();
  }

  /** Which way it goes: about the axis it has turned furthest around. The pose is no answer; the next station starts afresh. */
  #falls(): Standing {
    this.#fresh = true;
    if (Math.abs(this.roll) >= Math.abs(this.pitch)) return this.roll > 0 ? 2 : 1;
    return this.pitch > 0 ? 4 : 3;
  }
}

const known = new WeakMap<Chassis, Equilibrium>();

/** The one solver of a chassis, to be leaned, made to forget, and asked by one after the other. */
export function solverOf(chassis: Chassis): Equilibrium {
  const found = known.get(chassis) ?? new Equilibrium(chassis);
  known.set(chassis, found);
  return found;
}
