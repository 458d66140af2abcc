import type { Problem } from '../problem.ts';
import { incoming } from './incoming.svelte.ts';

/** Says what was wrong, where something was. */
export function tell(file: string, problems: readonly Problem[]): void {
  if (problems.length > 0) incoming.problems = { file, list: problems };
}
