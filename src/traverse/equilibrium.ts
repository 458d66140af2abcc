import type { Chassis } from './chassis.ts';
import { G_MPS2 } from './gravity.ts';
import { BALANCED, FALLING, FREE_STEPS, LIFTED, MOST_STEPS } from './limits.ts';
import type { Up } from './up.ts';

/** Whether a vehicle stands at a station, or which way it goes over. */
export const STANDINGS = ['stands', 'tips left', 'tips right', 'tips back', 'tips forward'] as const;

/** Index into `STANDINGS`. */
export type Standing = 0 | 1 | 2 | 3 | 4;

/** Wheels in the order in which every array of four has them. */
export const WHEELS = ['front left', 'front right', 'rear left', 'rear right'] as const;

/**
 * A vehicle standing on four ground heights, quasi-static, in the plane's frame. Unknown are the body's plane through
 * what was level ground at rest, b(x, y) = Z − x P + y Q (P, Q tangents of pitch and roll; nose down and right side down
 * positive), and the heights w of the four wheel centres. With e the ground under a wheel, R its radius, h₀ the wheel
 * centre's height at rest:
 *
 *     travel            c = w − b − h₀
 *     tyre              V = k_t max(0, e + R − w)
 *     spring and stops  S = S₀ + k c ± κ (c_left − c_right) + k_b max(0, c − bump) + k_d min(0, c + droop)
 *     wheel             V = S + m_u g u_z ∓ G                            G: load that goes round the springs, below
 *     heave             Σ S = m_s g u_z
 *     pitch             Σ x S = m_s g u_z (x_s + h_s P) − m g u_x h
 *     roll              Σ y S = −m_s g (u_z h_s Q + u_y (h_s − h_r))
 *
 * u is the upward vertical. Sideways forces enter the body at the roll centre, height h_r at the axle (mean of both by
 * load for the body), and so shift G = (Y_s h_r + m_u,axle g u_y h₀) / t from the high wheel to the low one past the
 * springs. These are the conditions for a minimum of the potential energy, a sum of convex pieces less
 * ½ m_s g u_z h_s (P² + Q²), the centre of mass moving outboard; where no minimum is left, the vehicle tips.
 *
 * Each wheel's own equation is eliminated exactly: with A the springs' stiffness of an axle (2 × 2) and T that of its
 * tyres, what the body feels is B = A − A (A + T)⁻¹ A. Newton's step on (Z, P, Q) is then exact as long as no wheel
 * lifts, lands, or meets a stop, and the last station's answer is the start.
 *
 * Neglected: the body's foreshortening on the plane (1 − cos: 3 % at 14°), and the heave of the centre of mass in the
 * moment of a slope (5 cm on 20° shifts 0.6 % of weight).
 */
export class Equilibrium {
  /** Contact forces normal to the plane, newtons; never negative. */
  readonly loadN = new Float64Array(4);
  /** Heights of the wheel centres, metres. */
  readonly hubM = new Float64Array(4);
  /** Suspension travel from loaded ride height, up positive, metres. */
  readonly travelM = new Float64Array(4);
  heaveM = 0;
  pitch = 0;
  roll = 0;

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
  /** m_u g u_z ∓ G of each wheel. */
  readonly #onWheelN = new Float64Array(4);
  readonly #tyre: number;
  readonly #radiusM: number;
  readonly #chassis: Chassis;
  readonly #weightN: number;
  #heaveN = 0;
  #pitchNm = 0;
  #rollNm = 0;
  #outboardNm = 0;
  #fresh = true;

  /** Out-of-balance at the present guess, and the stiffness of each wheel there. */
  readonly #springN = new Float64Array(4);
  readonly #wheelN = new Float64Array(4);
  readonly #own = new Float64Array(4);
  readonly #touch = new Float64Array(4);
  #gz = 0;
  #gp = 0;
  #gq = 0;
  #off = 0;
  readonly #step = new Float64Array(7);
  readonly #from = new Float64Array(7);

  constructor(chassis: Chassis, up: Up) {
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
    this.#outboardNm = sprungKg * G_MPS2 * up.z * sprungHeightM;
    for (let i = 0; i < 4; i++) {
      const axle = i < 2 ? front : rear;
      const sidewaysN = sprungKg * G_MPS2 * up.y * (i < 2 ? sprungOnFront : 1 - sprungOnFront);
      const roundM = sidewaysN * axle.rollCentreM + 2 * axle.unsprungKg * G_MPS2 * up.y * axle.hubHeightM;
      const round = (roundM / axle.trackWidthM) * (i % 2 === 0 ? 1 : -1);
      this.#onWheelN[i] = axle.unsprungKg * G_MPS2 * up.z - round;
    }
  }

  /** Forgets the last station, so that the next solve starts from the plane through its ground. */
  forget(): void {
    this.#fresh = true;
  }

  /** Solves for ground heights under the wheels, metres. Always ends; answers the standing, and leaves pose and loads. */
  solve(ground: ArrayLike<number>): Standing {
    if (this.#fresh) this.#startOn(ground);
    const enough = BALANCED * this.#weightN;
    for (let n = 0; n < MOST_STEPS; n++) {
      this.#measure(ground);
      if (this.#off <= enough) return this.#settled();
      const firm = this.#newton();
      if (n < FREE_STEPS && firm) this.#move(1);
      else this.#descend(ground);
      if (Math.abs(this.pitch) > FALLING || Math.abs(this.roll) > FALLING) return this.#falls();
    }
    return this.#falls();
  }

  #startOn(e: ArrayLike<number>): void {
    const { wheelbaseM, front, rear } = this.#chassis;
    this.heaveM = (e[0] + e[1] + e[2] + e[3]) / 4;
    this.pitch = (e[2] + e[3] - e[0] - e[1]) / (2 * wheelbaseM);
    this.roll = (e[0] + e[2] - e[1] - e[3]) / (front.trackWidthM + rear.trackWidthM);
    for (let i = 0; i < 4; i++) this.hubM[i] = e[i] + this.#rest[i];
    this.#fresh = false;
  }

  /** Forces, out-of-balance and stiffness at the present guess. */
  #measure(e: ArrayLike<number>): void {
    const { heaveM, pitch, roll } = this;
    let gz = this.#heaveN;
    let gp = -this.#pitchNm - this.#outboardNm * pitch;
    let gq = -this.#rollNm - this.#outboardNm * roll;
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
      const squash = e[i] + this.#radiusM - this.hubM[i];
      const V = squash > 0 ? this.#tyre * squash : 0;
      const wheelN = S + this.#onWheelN[i] - V;
      this.#own[i] = own;
      this.#touch[i] = squash > 0 ? this.#tyre : 0;
      this.#springN[i] = S;
      this.#wheelN[i] = wheelN;
      this.loadN[i] = V;
      off += Math.abs(wheelN);
      gz -= S;
      gp += this.#x[i] * S;
      gq -= this.#y[i] * S;
    }
    this.#gz = gz;
    this.#gp = gp;
    this.#gq = gq;
    this.#off = off + Math.abs(gz) + Math.abs(gp) + Math.abs(gq);
  }

  /** Newton's step into `#step` (Z, P, Q, four w); false where the energy is not convex and the step was made firm. */
  #newton(): boolean {
    let zz = 0;
    let zp = 0;
    let zq = 0;
    let pp = -this.#outboardNm;
    let pq = 0;
    let qq = -this.#outboardNm;
    let rz = -this.#gz;
    let rp = -this.#gp;
    let rq = -this.#gq;
    for (let i = 0; i < 4; i += 2) {
      const j = i + 1;
      const k = this.#coupling[i];
      const aL = this.#own[i] + k;
      const aR = this.#own[j] + k;
      const hL = aL + this.#touch[i];
      const hR = aR + this.#touch[j];
      const det = hL * hR - k * k;
      // A (A + T)⁻¹, by rows; A = [[aL, −κ], [−κ, aR]], A + T = [[hL, −κ], [−κ, hR]].
      const ll = (aL * hR - k * k) / det;
      const lr = (aL * k - k * hL) / det;
      const rl = (aR * k - k * hR) / det;
      const rr = (aR * hL - k * k) / det;
      const bLL = aL - (ll * aL - lr * k);
      const bLR = -k - (lr * aR - ll * k);
      const bRR = aR - (rr * aR - rl * k);
      // Eliminating w leaves on b: residual −S + (A (A+T)⁻¹) r_w, moved to the right-hand side.
      const fL = ll * this.#wheelN[i] + lr * this.#wheelN[j];
      const fR = rl * this.#wheelN[i] + rr * this.#wheelN[j];
      const x = this.#x[i];
      const y = this.#y[i];
      const sum = bLL + 2 * bLR + bRR;
      const skew = (bLL - bRR) * y;
      zz += sum;
      zp -= x * sum;
      zq += skew;
      pp += x * x * sum;
      pq -= x * skew;
      qq += y * y * (bLL - 2 * bLR + bRR);
      rz -= fL + fR;
      rp += x * (fL + fR);
      rq -= y * (fL - fR);
    }

    // Elimination by pivots Z, P, Q; a pivot that is not positive marks a way in which the body falls.
    const least = 1e-9 * (this.#outboardNm + zz);
    let firm = zz > least;
    if (!firm) zz += this.#weightN;
    const p1 = zp / zz;
    const q1 = zq / zz;
    let pp1 = pp - zp * p1;
    const pq1 = pq - zp * q1;
    if (!(pp1 > least)) {
      firm = false;
      pp1 = Math.abs(pp1) + this.#outboardNm;
    }
    const q2 = pq1 / pp1;
    let qq1 = qq - zq * q1 - pq1 * q2;
    if (!(qq1 > least)) {
      firm = false;
      qq1 = Math.abs(qq1) + this.#outboardNm;
    }
    const rp1 = rp - p1 * rz;
    const dQ = (rq - q1 * rz - q2 * rp1) / qq1;
    const dP = (rp1 - pq1 * dQ) / pp1;
    const dZ = (rz - zp * dP - zq * dQ) / zz;

    const step = this.#step;
    step[0] = dZ;
    step[1] = dP;
    step[2] = dQ;
    for (let i = 0; i < 4; i += 2) {
      const j = i + 1;
      const k = this.#coupling[i];
      const aL = this.#own[i] + k;
      const aR = this.#own[j] + k;
      const hL = aL + this.#touch[i];
      const hR = aR + this.#touch[j];
      const det = hL * hR - k * k;
      const bL = dZ - this.#x[i] * dP + this.#y[i] * dQ;
      const bR = dZ - this.#x[j] * dP + this.#y[j] * dQ;
      const sL = aL * bL - k * bR - this.#wheelN[i];
      const sR = aR * bR - k * bL - this.#wheelN[j];
      step[3 + i] = (hR * sL + k * sR) / det;
      step[3 + j] = (hL * sR + k * sL) / det;
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

  /** Takes the step, halved until the energy falls. */
  #descend(e: ArrayLike<number>): void {
    const from = this.#from;
    from[0] = this.heaveM;
    from[1] = this.pitch;
    from[2] = this.roll;
    for (let i = 0; i < 4; i++) from[3 + i] = this.hubM[i];
    const before = this.energyJ(e);
    let share = 1;
    for (let half = 0; half < 40; half++) {
      this.heaveM = from[0];
      this.pitch = from[1];
      this.roll = from[2];
      for (let i = 0; i < 4; i++) this.hubM[i] = from[3 + i];
      this.#move(share);
      if (this.energyJ(e) < before) return;
      share /= 2;
    }
  }

  /** Potential energy of the present pose over these ground heights, joules, from an arbitrary zero. */
  energyJ(e: ArrayLike<number>): number {
    const { heaveM, pitch, roll } = this;
    let E =
      this.#heaveN * heaveM -
      this.#pitchNm * pitch -
      this.#rollNm * roll -
      (this.#outboardNm * (pitch * pitch + roll * roll)) / 2;
    for (let i = 0; i < 4; i++)
      this.travelM[i] = this.hubM[i] - (heaveM - this.#x[i] * pitch + this.#y[i] * roll) - this.#rest[i];
    for (let i = 0; i < 4; i++) {
      const c = this.travelM[i];
      const over = Math.max(0, c - this.#bump[i]);
      const under = Math.min(0, c + this.#droop[i]);
      const squash = Math.max(0, e[i] + this.#radiusM - this.hubM[i]);
      E += this.#springN0[i] * c + this.#onWheelN[i] * this.hubM[i];
      E += (this.#spring[i] * c * c + this.#bumpStop[i] * over * over) / 2;
      E += (this.#droopStop[i] * under * under + this.#tyre * squash * squash) / 2;
      if (i % 2 === 0) E += (this.#coupling[i] * (c - this.travelM[i + 1]) ** 2) / 2;
    }
    return E;
  }

  /** Balanced: stands, unless a whole side or end bears nothing, which is the last moment before it goes over. */
  #settled(): Standing {
    const least = LIFTED * this.#weightN;
    const V = this.loadN;
    if (V[0] + V[2] <= least) return 2;
    if (V[1] + V[3] <= least) return 1;
    if (V[0] + V[1] <= least) return 3;
    if (V[2] + V[3] <= least) return 4;
    return this.#newton() ? 0 : this.#falls();
  }

  /** Which way it goes: about the axis it has turned furthest around. The pose is no answer; the next station starts afresh. */
  #falls(): Standing {
    this.#fresh = true;
    if (Math.abs(this.roll) >= Math.abs(this.pitch)) return this.roll > 0 ? 2 : 1;
    return this.pitch > 0 ? 4 : 3;
  }
}
