import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Stretch } from '../terrain/obstacle.ts';
import { assessTraverse } from '../traverse/traverse.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { ClassificationId, Gear, Trial } from './classification.ts';
import { classificationOf } from './classification.ts';
import type { Reason } from './rating.ts';
import type { ReferenceName } from './reference.ts';
import { referenceRungs, referenceVehicle } from './reference.ts';
import type { RungVerdict } from './verdict.ts';
import { groundsOf, rankOf, verdictOn } from './verdict.ts';

/** The level that the reference vehicles make of a stretch. */
export interface ByTrials {
  readonly level: number;
  /** The vehicle of the level below that does not go; null where the level that was started from holds. */
  readonly reason: Reason | null;
  /** Not even that of the hardest level goes. */
  readonly beyond: boolean;
}

/**
 * The least level, from `fromLevel` up, all of whose vehicles go along the main line: verdicts of the traverse, judged twice
 * like any other. Null where the ground is not known well enough to say anything.
 */
export function levelByTrials(
  stretch: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
  classification: ClassificationId,
  fromLevel: number,
): ByTrials | null {
  const grounds = groundsOf(stretch, direction, trackSlope);
  if (grounds.entered === null) return null;
  const said = new Map<string, readonly RungVerdict[]>();
  const ask: Ask = (name, tyresDown) => {
    const key = `${name} ${tyresDown}`;
    const known = said.get(key);
    if (known !== undefined) return known;
    const vehicle = referenceVehicle(name);
    const rungs = referenceRungs(vehicle.values, tyresDown);
    const { ladder } = verdictOn(vehicle, grounds, 0, assessTraverse, rungs);
    said.set(key, ladder);
    return ladder;
  };
  const { levels } = classificationOf(classification);
  let reason: Reason | null = null;
  for (let level = fromLevel; level <= levels.length; level++) {
    const fails = firstFailure(levels[level - 1].trials, ask);
    if (fails === null) return { level, reason, beyond: false };
    reason = fails;
  }
  return { level: levels.length, reason, beyond: true };
}

type Ask = (name: ReferenceName, tyresDown: boolean) => readonly RungVerdict[];

function firstFailure(trials: readonly Trial[], ask: Ask): Reason | null {
  for (const trial of trials) {
    const fails = failure(trial, ask);
    if (fails !== null) return fails;
  }
  return null;
}

function failure(trial: Trial, ask: Ask): Reason | null {
  const most = rankOf(trial.care ? 'goes with care' : 'goes');
  const best = (tyresDown: boolean) =>
    ask(trial.vehicle, tyresDown)
      .filter(({ rung }) => allows(trial.gear, rung.aids))
      .reduce((least, next) => (rankOf(next.word) < rankOf(least.word) ? next : least));
  let { word, limit, cause } = best(false);
  if (rankOf(word) > most && trial.tyresDown) {
    const down = best(true);
    if (rankOf(down.word) < rankOf(word)) ({ word, limit, cause } = down);
  }
  return rankOf(word) <= most ? null : { kind: 'vehicle', trial, word, check: limit?.name ?? null, cause };
}

function allows(gear: Gear, aids: Aids): boolean {
  if (gear === 'locked') return true;
  if (aids.rearLocked || aids.frontLocked) return false;
  return gear === 'low' || (!aids.lowRange && !aids.centreLocked);
}
