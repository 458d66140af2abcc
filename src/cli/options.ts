import { parseArgs } from 'node:util';
import type { System } from '../units.ts';

/** What stands on the command line beside the command. */
export interface Options {
  readonly file: string;
  readonly system: System;
  readonly json: boolean;
  /** Against the recorded direction. */
  readonly reversed: boolean;
  /** Where to write; standard output where null. */
  readonly out: string | null;
}

/** The options, or a sentence that says what is wrong with them. */
export function optionsFrom(args: readonly string[]): Options | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        imperial: { type: 'boolean', default: false },
        json: { type: 'boolean', default: false },
        reversed: { type: 'boolean', default: false },
        out: { type: 'string' },
      },
    });
    if (positionals.length !== 1) return 'Name one file.';
    return {
      file: positionals[0],
      system: values.imperial ? 'imperial' : 'metric',
      json: values.json,
      reversed: values.reversed,
      out: values.out ?? null,
    };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
