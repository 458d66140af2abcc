import { DRAWS, drawn } from '../terrain/draws.ts';
import type { Ground, TrackSlope } from '../terrain/ground.ts';
import { groundOf } from '../terrain/ground.ts';
import type { Direction, Stretch } from '../terrain/obstacle.ts';
import { DRAWN_SAMPLE_M } from '../traverse/limits.ts';
import { passes } from '../traverse/passes.ts';
import { Relief } from '../traverse/relief.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { RungVerdict } from './verdict.ts';

/** One drawn ground, sampled once for all vehicles. */
export interface DrawnGround {
  readonly ground: Ground;
  readonly relief: Relief;
}

/** The grounds that the ranges of a stretch allow: `DRAWS` of them, or none where a number is not known. */
export function drawnGrounds(
  stretch: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
): DrawnGround[] {
  const grounds: DrawnGround[] = [];
  for (let draw = 0; draw < DRAWS; draw++) {
    const ground = groundOf(stretch, direction, trackSlope, drawn(draw));
    if (ground === null) return [];
    grounds.push({ ground, relief: new Relief(ground.features, ground.lengthM, DRAWN_SAMPLE_M) });
  }
  return grounds;
}

/**
 * In how many of the draws nothing fails with the aids of a verdict: it passes unaided, at a crawl. Only checks that fail
 * with every value at its hard end are asked, as no draw is harder; where none does, all draws go. Null where not known.
 */
export function drawsThatGo(
  values: VehicleValues,
  offsetM: number,
  verdict: RungVerdict,
  grounds: () => readonly DrawnGround[],
): number | null {
  if (verdict.limit === null) return null;
  const doubtful = new Set(
    [...verdict.checks, ...verdict.worstChecks]
      .filter((check) => check.margin < 0)
      .map((check) => check.name),
  );
  if (doubtful.size === 0) return DRAWS;
  return grounds().filter(({ ground, relief }) =>
    passes(values, ground, relief, offsetM, verdict.rung.aids, doubtful),
  ).length;
}

/** Out of a hundred, rounded so that only all draws make a hundred and only none make nothing. */
export function outOfHundred(draws: number): number {
  if (draws <= 0) return 0;
  return Math.max(1, Math.floor((100 * draws) / DRAWS));
}
