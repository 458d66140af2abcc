import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line as a person does, in a process of its own. */
export function rutline(...args: readonly string[]): Promise<Ran> {
  return ran([inject('cli'), ...args]);
}

/** The same from its sources, as `npm run cli` does. */
export function rutlineFromSources(...args: readonly string[]): Promise<Ran> {
  return ran(['--import', 'tsx', 'src/cli/rutline.ts', ...args]);
}

function ran(args: readonly string[]): Promise<Ran> {
  return new Promise((resolve) => {
    execFile(process.execPath, args, { cwd: ROOT, maxBuffer: 2 ** 26 }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}
