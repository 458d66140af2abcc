import type { Problem } from '../problem.ts';
import type { Words } from '../words/words.ts';
import { say } from '../words/words.ts';

/** What can go wrong between Rutline and the device's store; `say.store` says it. */
export type Trouble = keyof Words['store'];

/** A problem with the device's store. `trouble` is for the program to act on, the rest for a person. */
export interface StoreProblem extends Problem {
  readonly trouble: Trouble;
}

export function storeProblem(trouble: Trouble, detail = ''): StoreProblem {
  const { what, done } = say.store[trouble];
  return {
    trouble,
    severity: 'error',
    where: say.problem.device,
    what: detail === '' ? what : `${what} (${detail})`,
    done,
    times: 1,
  };
}

/** The same of a graded track, where it is said in other words than of a trip. */
export function trackProblem(trouble: 'missing' | 'corrupt' | 'changed elsewhere' | 'full'): StoreProblem {
  return { ...storeProblem(trouble), ...say.library[trouble] };
}

/** That a history which could not be read gave way to one that came. */
export function mendedProblem(track: string): Problem {
  return { severity: 'warning', where: track, ...say.library.mended, times: 1 };
}

/** Of problems, the first trouble with the store; null where there is none among them. */
export function troubleOf(problems: readonly Problem[]): Trouble | null {
  return (
    problems.map((one) => (one as StoreProblem).trouble).find((trouble) => trouble !== undefined) ?? null
  );
}

/** The trouble behind an exception of IndexedDB (Indexed Database API 3.0, W3C, section "Exceptions"). */
export function problemOf(error: unknown): StoreProblem {
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  switch (name) {
    case 'QuotaExceededError':
      return storeProblem('full');
    case 'VersionError':
      return storeProblem('newer version');
    case 'InvalidStateError':
      return storeProblem('closed');
    case 'SecurityError':
      return storeProblem('not available');
    default:
      return storeProblem('failed', `${name}: ${message}`);
  }
}
