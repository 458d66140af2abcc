import type { Sweep } from '../grade/sweep.ts';
import { COARSE, FINE, sweepOf } from '../grade/sweep.ts';
import type { Verdict } from '../grade/verdict.ts';
import { groundsOf, verdictOn } from '../grade/verdict.ts';
import type { Change, Try } from '../grade/whatIf.ts';
import { whatIf } from '../grade/whatIf.ts';
import type { Ground } from '../terrain/ground.ts';
import type { Along } from '../traverse/along.ts';
import { alongLine } from '../traverse/along.ts';
import { lettingGo } from '../traverse/relief.ts';
import { ladder } from '../vehicle/aids.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { knownVehicle } from './knownVehicle.ts';

/** One vehicle on one line, to be looked at station by station. */
export interface LookTask {
  readonly on: Try;
  /** The rung to look at; null for the one that the verdict asks for. */
  readonly rung: number | null;
  /** Another vehicle to compare on the same line, as it comes; null for none. */
  readonly other: Vehicle | null;
}

/** What a look shows. `along` is null where vehicle or ground are not known; the verdict then says what is missing. */
export interface Look {
  readonly verdict: Verdict;
  readonly rung: number;
  readonly slopeRad: number;
  readonly along: Along | null;
  readonly other: Along | null;
}

export function lookAt({ on, rung, other }: LookTask): Look {
  const { vehicle, stretch, direction, trackSlope, offsetM, ahead } = on;
  const grounds = groundsOf(stretch, direction, trackSlope, ahead);
  const verdict = verdictOn(vehicle, grounds, offsetM);
  const own = Math.max(
    0,
    verdict.ladder.findIndex((step) => step.rung === verdict.rung),
  );
  const looked = Math.min(rung ?? own, verdict.ladder.length - 1);
  const { entered } = grounds;
  const known = entered !== null && verdict.word !== 'not known';
  return {
    verdict,
    rung: looked,
    slopeRad: entered?.slopeRad ?? 0,
    along: known ? alongOf(vehicle, entered, offsetM, looked) : null,
    other: known && other !== null ? alongOf(other, entered, offsetM, 0) : null,
  };
}

function alongOf(vehicle: Vehicle, ground: Ground, offsetM: number, looked: number): Along | null {
  if (Object.values(vehicle.values).some((value) => Number.isNaN(value))) return null;
  const aidSets = ladder(vehicle.values).map(({ aids }) => aids);
  return alongLine(vehicle.values, ground, offsetM, aidSets, looked);
}

/** What of an answer changes hands and is not copied. */
export function buffersOf(answer: Look | Sweep | readonly Change[] | null): ArrayBuffer[] {
  if (answer === null || !('along' in answer)) return [];
  const { along, other } = answer;
  return [along, other].flatMap((one) => (one === null ? [] : [one.record.stationM.buffer as ArrayBuffer]));
}

export interface SweepTask {
  readonly on: Try;
  readonly rung: number;
  /** Coarse while a size is being dragged, fine and with verdicts at rest. */
  readonly grain: 'coarse' | 'fine';
}

export function sweepAt({ on, rung, grain }: SweepTask): Sweep | null {
  const grounds = groundsOf(on.stretch, on.direction, on.trackSlope, on.ahead);
  return sweepOf(on.vehicle, grounds, rung, grain === 'fine' ? FINE : COARSE);
}

/** What the worker of the workbench is asked, and what it answers. */
export interface BenchWork {
  readonly look: { readonly task: LookTask; readonly answer: Look };
  readonly sweep: { readonly task: SweepTask; readonly answer: Sweep | null };
  readonly whatIf: { readonly task: Try; readonly answer: readonly Change[] };
}

export const BENCH: {
  readonly [K in keyof BenchWork]: (task: BenchWork[K]['task']) => BenchWork[K]['answer'];
} = {
  look: (task) =>
    lettingGo(() => lookAt({ ...task, on: again(task.on), other: task.other && knownVehicle(task.other) })),
  sweep: (task) => lettingGo(() => sweepAt({ ...task, on: again(task.on) })),
  whatIf: (task) => lettingGo(() => whatIf(again(task))),
};

function again(on: Try): Try {
  return { ...on, vehicle: knownVehicle(on.vehicle) };
}
