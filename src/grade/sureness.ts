import { DRAWS, drawn } from '../terrain/draws.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import { groundOf } from '../terrain/ground.ts';
import type { Take } from '../terrain/take.ts';
import { AT_BEST, AT_WORST } from '../terrain/take.ts';
import type { Direction, Stretch } from '../terrain/obstacle.ts';
import type { CheckName } from '../traverse/assess.ts';
import { BEYOND_M, DRAWN_SAMPLE_M } from '../traverse/limits.ts';
import { NEAR, Passage } from '../traverse/passage.ts';
import { Relief } from '../traverse/relief.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { RungVerdict } from './verdict.ts';

/** A vehicle on a line of a stretch, `offsetM` left of the main one, with what is said of it. */
export interface Asked {
  readonly values: VehicleValues;
  readonly offsetM: number;
  readonly verdict: RungVerdict;
}

/**
 * In how many of the draws nothing fails with the aids of each verdict: it passes unaided, at a crawl. Only checks that
 * fail, or come within a tolerance of it, with every value at its hard end are asked, and only where they do; where none
 * does, all draws go, and where one fails clearly with every value at its easy end, none does. Each draw is sampled once
 * for all who ask, where any of them looks. Null where not known.
 */
export function drawsThatGo(
  asked: readonly Asked[],
  stretch: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
): (number | null)[] {
  const counts = asked.map(({ verdict }): number | null => (verdict.limit === null ? null : DRAWS));
  const doubted = asked.flatMap(({ values, offsetM, verdict }, i) => {
    const names = doubtful(verdict);
    return counts[i] === null || names.size === 0 ? [] : [{ values, offsetM, verdict, i, names }];
  });
  if (doubted.length === 0) return counts;

  const taken = (take: Take) => groundOf(stretch, direction, trackSlope, take);
  const worst = taken(AT_WORST);
  const best = taken(AT_BEST);
  const draws = Array.from({ length: DRAWS }, (_, draw) => taken(drawn(draw))).filter((one) => one !== null);
  if (worst === null || best === null || draws.length < DRAWS) {
    for (const { i } of doubted) counts[i] = null;
    return counts;
  }

  const reachM = stretch.lengthM / 2 + BEYOND_M;
  const atWorst = new Relief(worst.features, -reachM, reachM, DRAWN_SAMPLE_M);
  const atBest = new Relief(best.features, -reachM, reachM, DRAWN_SAMPLE_M);
  const open = doubted.flatMap(({ values, offsetM, verdict, i, names }) => {
    const passage = new Passage(values, offsetM, verdict.rung.aids, names, worst, atWorst);
    counts[i] = 0;
    return passage.failsBy(NEAR, best, atBest) ? [] : [{ passage, i, goesIn: 0 }];
  });
  atWorst.clear();
  atBest.clear();
  const fromM = Math.min(...open.map(({ passage }) => passage.fromM));
  const toM = Math.max(...open.map(({ passage }) => passage.toM));
  for (const ground of open.length > 0 ? draws : []) {
    const relief = new Relief(ground.features, fromM, toM, DRAWN_SAMPLE_M);
    for (const one of open) if (one.passage.goesOn(ground, relief)) one.goesIn++;
    relief.clear();
  }
  for (const { i, goesIn } of open) counts[i] = goesIn;
  return counts;
}

function doubtful({ checks, worstChecks }: RungVerdict): ReadonlySet<CheckName> {
  return new Set(
    [...checks, ...worstChecks]
      .filter(({ margin, tolerance }) => margin < NEAR * tolerance)
      .map(({ name }) => name),
  );
}

/** Out of a hundred, rounded so that only all draws make a hundred and only none make nothing. */
export function outOfHundred(draws: number): number {
  if (draws <= 0) return 0;
  return Math.max(1, Math.floor((100 * draws) / DRAWS));
}
