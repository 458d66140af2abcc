import type { Problem } from '../problem.ts';
import type { Options } from './options.ts';

/** What a command answers: text for a person or a record for `--json`, and the problems of what it read. */
export interface Answer {
  readonly text: string;
  /** What is no text, and goes into a file instead of it. */
  readonly bytes?: Uint8Array;
  readonly json: unknown;
  readonly problems: readonly Problem[];
}

export interface Command {
  /** Such as `slopes FILE.gpx`. */
  readonly usage: string;
  readonly sentence: string;
  readonly run: (options: Options) => Promise<Answer>;
}

/** An answer that is only problems. */
export function nothingBut(problems: readonly Problem[]): Answer {
  return { text: '', json: null, problems };
}
