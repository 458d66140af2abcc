import type { Ground, TrackSlope } from '../terrain/ground.ts';
import { groundOf } from '../terrain/ground.ts';
import type { Direction, Line, Obstacle } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import { AS_ENTERED } from '../terrain/take.ts';
import { checkStretch } from '../terrain/check.ts';
import type { Assess, Assessment } from '../traverse/assess.ts';
import { limiting } from '../traverse/assess.ts';
import { assessTraverse } from '../traverse/traverse.ts';
import { ladder } from '../vehicle/aids.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { faultOf, offsetOf } from './verdict.ts';

/** One vehicle on one line with the aids that it had engaged. */
export interface Attempt {
  readonly vehicle: Vehicle;
  readonly obstacle: Obstacle;
  readonly lineId: string;
  readonly direction: Direction;
  /** Name of the rung of aids that was engaged. */
  readonly rung: string;
  readonly trackSlope: TrackSlope | null;
}

/** Adhesion is sought between these: below the slickest ice, above the driest concrete. */
const LEAST = 0.02;
const MOST = 1.2;
/** Halvings of that range: to less than 0.001. */
const HALVINGS = 11;

/**
 * Peak adhesion at which an attempt's traction margin is nought, the ground else as entered. Null where its verdict does
 * not hang on traction, where nothing can be said of it, and where no adhesion, or any, would do.
 */
export function neededAdhesion(attempt: Attempt, assess: Assess = assessTraverse): number | null {
  const { vehicle, obstacle, direction, trackSlope } = attempt;
  const line: Line | undefined = obstacle.lines.find(({ id }) => id === attempt.lineId);
  const rung =
    faultOf(vehicle) === null ? ladder(vehicle.values).find(({ name }) => name === attempt.rung) : null;
  if (line === undefined || rung == null) return null;
  const stretch = stretchOf(obstacle, line);
  const ground =
    checkStretch(stretch, '').length > 0 ? null : groundOf(stretch, direction, trackSlope, AS_ENTERED);
  if (ground === null) return null;
  const assessed = (on: Ground) => assess(vehicle.values, [on], offsetOf(line, direction), [rung.aids])[0];

  const asEntered = assessed(ground);
  if (!asEntered.known || limiting(asEntered.checks).name !== 'traction') return null;
  const holds = (adhesion: number) => tractionOf(assessed(withAdhesion(ground, adhesion))) >= 0;
  if (holds(LEAST) || !holds(MOST)) return null;
  let [low, high] = [LEAST, MOST];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** The same ground with another peak adhesion; sliding stays the same part of it. */
function withAdhesion(ground: Ground, peakAdhesion: number): Ground {
  const part = ground.slidingAdhesion / ground.peakAdhesion;
  return { ...ground, peakAdhesion, slidingAdhesion: peakAdhesion * part };
}

function tractionOf(assessment: Assessment): number {
  if (!assessment.known) return -Infinity;
  return assessment.checks.find(({ name }) => name === 'traction')?.margin ?? -Infinity;
}
