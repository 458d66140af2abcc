import { DRAWS, drawn } from '../terrain/draws.ts';
import type { Ground, TrackSlope } from '../terrain/ground.ts';
import { groundOf } from '../terrain/ground.ts';
import type { Take } from '../terrain/take.ts';
import { AT_BEST, AT_WORST } from '../terrain/take.ts';
import type { Direction, Stretch } from '../terrain/obstacle.ts';
import { DRAWN_SAMPLE_M } from '../traverse/limits.ts';
import { NEAR, Passage } from '../traverse/passage.ts';
import { Relief } from '../traverse/relief.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { RungVerdict } from './verdict.ts';

/** One ground with its samples, shared by all vehicles. */
interface Sampled {
  readonly ground: Ground;
  readonly relief: Relief;
}

/** The grounds that the ranges of a stretch allow. */
export interface DrawnGrounds {
  readonly worst: Sampled;
  readonly best: Sampled;
  /** `DRAWS` of them. */
  readonly draws: readonly Sampled[];
}

/** Null where a number of the stretch is not known. */
export function drawnGrounds(
  stretch: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
): DrawnGrounds | null {
  const sampled = (take: Take): Sampled | null => {
    const ground = groundOf(stretch, direction, trackSlope, take);
    return ground && { ground, relief: new Relief(ground.features, ground.lengthM, DRAWN_SAMPLE_M) };
  };
  const worst = sampled(AT_WORST);
  const best = sampled(AT_BEST);
  const draws = Array.from({ length: DRAWS }, (_, draw) => sampled(drawn(draw))).filter(
    (one) => one !== null,
  );
  return worst === null || best === null || draws.length < DRAWS ? null : { worst, best, draws };
}

/**
 * In how many of the draws nothing fails with the aids of a verdict: it passes unaided, at a crawl. Only checks that fail,
 * or come within a tolerance of it, with every value at its hard end are asked, and only where they do; where none does,
 * all draws go, and where one fails clearly with every value at its easy end, none does. Null where not known.
 */
export function drawsThatGo(
  values: VehicleValues,
  offsetM: number,
  verdict: RungVerdict,
  grounds: () => DrawnGrounds | null,
): number | null {
  if (verdict.limit === null) return null;
  const doubtful = new Set(
    [...verdict.checks, ...verdict.worstChecks]
      .filter((check) => check.margin < NEAR * check.tolerance)
      .map((check) => check.name),
  );
  if (doubtful.size === 0) return DRAWS;
  const drawn = grounds();
  if (drawn === null) return null;
  const { worst, best, draws } = drawn;
  const passage = new Passage(values, offsetM, verdict.rung.aids, doubtful, worst.ground, worst.relief);
  if (passage.failsBy(NEAR, best.ground, best.relief)) return 0;
  return draws.filter(({ ground, relief }) => passage.goesOn(ground, relief)).length;
}

/** Out of a hundred, rounded so that only all draws make a hundred and only none make nothing. */
export function outOfHundred(draws: number): number {
  if (draws <= 0) return 0;
  return Math.max(1, Math.floor((100 * draws) / DRAWS));
}
