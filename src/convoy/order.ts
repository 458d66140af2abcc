import { say } from '../words/words.ts';

/** What decides where a vehicle drives in the line. */
export interface Runner {
  readonly vehicleId: string;
  /** Passes of others before it after which it still goes unaided everywhere; -1 where it never does. */
  readonly passesBorne: number;
  /** It carries a winch, or straps and a rated point: it can pull another out. */
  readonly canPull: boolean;
}

/** A proposed order, and why each vehicle stands where it does. */
export interface Order {
  readonly vehicleIds: readonly string[];
  readonly reasons: readonly string[];
  /** How many go unaided in it. */
  readonly unaided: number;
}

/**
 * The order in which most go unaided, with a vehicle that can pull at each end.
 *
 * Every pass leaves the ground worse alike, so a vehicle that bears n passes before it has a deadline: place n + 1.
 * Taking vehicles by their deadlines lets the most of them be in time (Moore, Management Science 15, 1968: unit jobs,
 * earliest due date). Those that never go unaided come last but one, where someone can still pull them on. The ends are
 * kept for pullers: in front the one that bears the most passes but one, as long as another puller is left behind it;
 * never the only capable one first.
 */
export function orderOf(runners: readonly Runner[]): Order {
  const pullers = runners.filter((runner) => runner.canPull);
  const byDeadline = [...runners].sort((a, b) => deadline(a) - deadline(b));
  const last = pullers.toSorted((a, b) => a.passesBorne - b.passesBorne).at(-1) ?? null;
  const goers = pullers.filter((runner) => runner !== last && runner.passesBorne >= 0);
  const first = goers.toSorted((a, b) => deadline(a) - deadline(b))[0] ?? null;

  const middle = byDeadline.filter((runner) => runner !== first && runner !== last);
  const line = [first, ...inTime(middle, first === null ? 0 : 1), last].filter((runner) => runner !== null);
  return {
    vehicleIds: line.map((runner) => runner.vehicleId),
    reasons: line.map((runner, i) => reason(runner, i, runner === first, runner === last)),
    unaided: line.filter((runner, i) => runner.passesBorne >= i).length,
  };
}

function deadline(runner: Runner): number {
  return runner.passesBorne < 0 ? Infinity : runner.passesBorne;
}

/** Those who can still be in time by deadline, then those who cannot. */
function inTime(runners: readonly Runner[], passesBefore: number): Runner[] {
  const early: Runner[] = [];
  const late: Runner[] = [];
  for (const runner of runners) {
    if (runner.passesBorne >= passesBefore + early.length) early.push(runner);
    else late.push(runner);
  }
  return [...early, ...late];
}

function reason(runner: Runner, place: number, first: boolean, last: boolean): string {
  const goes =
    runner.passesBorne < 0
      ? say.order.needsHelp
      : runner.passesBorne < place
        ? say.order.needsEarlier
        : Number.isFinite(runner.passesBorne)
          ? say.order.upTo(runner.passesBorne)
          : say.order.anyPlace;
  if (first) return say.order.leads(goes);
  if (last) return say.order.last(goes);
  return goes;
}
