import { rad } from '../units.ts';
import type { How } from './measure.ts';
import { plusMinus } from './measure.ts';

/**
 * The upward vertical as direction cosines in the axes of a phone that lies on its back: x to the right of the screen,
 * y to its top edge, z out of the screen (Device Orientation and Motion, W3C). With the top edge along the recorded
 * direction, x is right, y forward.
 */
export interface Upward {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** What the phone said at a moment; it holds until the next. */
export interface Sample {
  readonly atMs: number;
  readonly up: Upward;
  /** Turn about the vertical from where it happened to start, anticlockwise seen from above; NaN where not told. */
  readonly turnRad: number;
}

/** The mean of what was said over `STILL_OVER_MS`, and how far it strayed from it (root mean square). */
export interface Rest {
  readonly up: Upward;
  readonly spreadRad: number;
  readonly turnRad: number;
}

/** What the phone says on level ground: its own error, of sensor, case and camera bump together. */
export interface Zero {
  readonly up: Upward;
  readonly plusMinusRad: number;
}

export interface Inclination {
  /** Along the recorded direction, climbing positive. */
  readonly slopeRad: number;
  /** Across, left side high positive. */
  readonly camberRad: number;
  /** Of either. */
  readonly plusMinusRad: number;
}

/** Why two readings give no zero. */
export type ZeroFault = 'moving' | 'not turned' | 'too far off';

/** A hand trembles at some five times a second; a second holds several swings. */
export const STILL_OVER_MS = 1000;

/** A phone laid down strays by less than a tenth of a degree, one held in the hand by a degree. Common practice, no source. */
export const STILL_RAD = rad(0.25);

/** Browsers may round angles to a tenth of a degree (Device Orientation and Motion, W3C), and tell smaller changes or not. */
const GRAIN_RAD = rad(0.1);

/** Error of a phone that was never turned round: sensor and camera bump. Common practice, no source. */
const UNZEROED_RAD = rad(2.5);

/** Gain of the sensor, by which an error grows with the steepness; no turning round finds it. Common practice, no source. */
const GAIN_SHARE = 0.01;

/** A phone farther off than this was not laid twice on the same spot, or not turned. */
const MOST_ZERO_RAD = rad(5);

/** How exactly a hand turns a phone end for end. */
const TURN_SLACK_RAD = rad(20);
const USUAL_TURN_SLACK_RAD = rad(5);

/**
 * The vertical out of the angles of a DeviceOrientationEvent: the third row of Rz(alpha) Rx(beta) Ry(gamma), by which
 * the specification takes the phone's axes to the earth's. Unlike the readings of acceleration, its sign is the same in
 * all browsers, and it is rounded to a tenth of a degree where those are rounded to 0.1 m/s², which is 0.6°.
 */
export function upwardOf(betaRad: number, gammaRad: number): Upward {
  return {
    x: -Math.cos(betaRad) * Math.sin(gammaRad),
    y: Math.sin(betaRad),
    z: Math.cos(betaRad) * Math.cos(gammaRad),
  };
}

/** The phone over the last `STILL_OVER_MS`, each sample weighed by how long it held; null until it is known for so long. */
export function restOf(samples: readonly Sample[], nowMs: number): Rest | null {
  const sinceMs = nowMs - STILL_OVER_MS;
  if (samples.length === 0 || samples[0].atMs > sinceMs) return null;
  const held = samples
    .map(({ up, atMs }, i) => {
      const untilMs = i + 1 < samples.length ? samples[i + 1].atMs : nowMs;
      return { up, forMs: Math.max(0, Math.min(untilMs, nowMs) - Math.max(atMs, sinceMs)) };
    })
    .filter(({ forMs }) => forMs > 0);
  const up = unit(sum(held.map(({ up, forMs }) => scaled(up, forMs))));
  const square = held.reduce((total, one) => total + one.forMs * squareOf(difference(one.up, up)), 0);
  return { up, spreadRad: Math.sqrt(square / STILL_OVER_MS), turnRad: samples[samples.length - 1].turnRad };
}

/** The samples that `restOf` may still need. */
export function recent(samples: readonly Sample[], nowMs: number): readonly Sample[] {
  const first = samples.findLastIndex(({ atMs }) => atMs <= nowMs - STILL_OVER_MS);
  return first <= 0 ? samples : samples.slice(first);
}

export function isStill(rest: Rest | null): rest is Rest {
  return rest !== null && rest.spreadRad <= STILL_RAD;
}

/** Lying on its back, as all readings are meant. */
export function onItsBack({ z }: Upward): boolean {
  return z > 0.3;
}

/**
 * The reversal test of a spirit level: read, turn end for end on the same spot, read again; what both readings share is
 * the instrument's own. With the true vertical u in the phone's axes and its error a rotation E, the readings are
 * E (ux, uy, uz) and E (−ux, −uy, uz), and their sum 2 uz E z: whatever the ground, its direction is what the phone says
 * on level ground. A hand turns by 180° only nearly, which leaves half of what is missing times the steepness of the
 * spot: hence level ground, and the ±.
 */
export function zeroOf(first: Rest, second: Rest): Zero | ZeroFault {
  if (!isStill(first) || !isStill(second)) return 'moving';
  const turnedRad = Math.abs(wrapped(second.turnRad - first.turnRad));
  if (turnedRad < Math.PI - TURN_SLACK_RAD) return 'not turned';
  const up = unit(sum([first.up, second.up]));
  if (!(up.z > Math.cos(MOST_ZERO_RAD))) return 'too far off';
  const across = Math.sqrt(squareOf(difference(first.up, second.up))) / 2;
  const steepness = across / Math.sqrt(1 - across * across);
  const plusMinusRad =
    (first.spreadRad + second.spreadRad) / 2 + GRAIN_RAD / 2 + (steepness * USUAL_TURN_SLACK_RAD) / 2;
  return { up, plusMinusRad };
}

/** Slope and camber of the bar under the phone; each is the sine of how far that axis rises, as the traverse takes them. */
export function inclinationOf({ up, spreadRad }: Rest, zero: Zero | null): Inclination {
  const { x, y } = zero === null ? up : levelled(up, zero.up);
  const ownRad = zero === null ? UNZEROED_RAD : zero.plusMinusRad;
  return {
    slopeRad: Math.asin(y),
    camberRad: Math.asin(-x),
    plusMinusRad: spreadRad + GRAIN_RAD / 2 + ownRad + GAIN_SHARE * Math.sqrt(x * x + y * y),
  };
}

/** The kind of measuring whose ± is the least that covers a reading's own. */
export function howOf({ plusMinusRad }: Inclination): How {
  const covers = (how: How) => plusMinusRad <= plusMinus(0, 'angle', how);
  return (['taped', 'paced'] as const).find(covers) ?? 'by eye';
}

/** Turns a reading by the least rotation that takes `zero` upright: v + w × v + w × (w × v) / (1 + zero·z), w = zero × z. */
function levelled(v: Upward, zero: Upward): Upward {
  const w = { x: zero.y, y: -zero.x, z: 0 };
  const once = cross(w, v);
  return unit(sum([v, once, scaled(cross(w, once), 1 / (1 + zero.z))]));
}

function wrapped(angleRad: number): number {
  return angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
}

function cross(a: Upward, b: Upward): Upward {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

function sum(vectors: readonly Upward[]): Upward {
  return vectors.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z }), { x: 0, y: 0, z: 0 });
}

function difference(a: Upward, b: Upward): Upward {
  return sum([a, scaled(b, -1)]);
}

function scaled({ x, y, z }: Upward, by: number): Upward {
  return { x: x * by, y: y * by, z: z * by };
}

function squareOf({ x, y, z }: Upward): number {
  return x * x + y * y + z * z;
}

function unit(v: Upward): Upward {
  return scaled(v, 1 / Math.sqrt(squareOf(v)));
}
