import { say } from './words/words.ts';

/**
 * One thing that is wrong with what was read or entered, for a person to act on.
 * Readers return `{ value, problems }`; they never throw for bad input.
 */
export interface Problem {
  /** `error`: (part of) the input could not be used. `warning`: used, but repaired or doubtful. */
  readonly severity: 'error' | 'warning';
  /** Where, in the reader's terms: `line 12, <trkpt>`, `obstacles[2].ground.slopeRad`. */
  readonly where: string;
  /** What is wrong, as a sentence. */
  readonly what: string;
  /** What was done about it, or what the person can do. */
  readonly done: string;
  /** How often the same thing occurred; `where` names the first place. */
  readonly times: number;
}

/** What a reader answers: the value, or null where nothing could be used, and all that is wrong. */
export interface Reading<T> {
  readonly value: T | null;
  readonly problems: readonly Problem[];
}

/** One line for a terminal or a list. */
export function problemText(problem: Problem): string {
  const times = problem.times > 1 ? ` ${say.problem.times(problem.times)}` : '';
  return `${problem.severity}: ${problem.where}: ${problem.what} ${problem.done}${times}`;
}
