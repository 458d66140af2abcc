import { SvelteMap } from 'svelte/reactivity';
import type { Answered } from './presetEdit.ts';
import { NOTHING_ANSWERED } from './presetEdit.ts';

const KEY = 'rutline.answered';
/** Obstacles whose answers are remembered; the ground itself is in the trip. */
const MOST = 200;
/** Answers of one obstacle that are remembered, so that those before are known again when a step is undone. */
const MOST_GIVEN = 100;
/** Of these, how many outlive the page, as steps back do not. */
const KEPT_GIVEN = 3;

/** Answers to preset questions by obstacle, so that the questions can be shown again as they were answered. */
class AnsweredQuestions {
  readonly #by = new SvelteMap<string, readonly Answered[]>(kept());

  /** What was answered, the latest last; before that, nothing was. */
  of(obstacleId: string): readonly Answered[] {
    return [NOTHING_ANSWERED, ...(this.#by.get(obstacleId) ?? [])];
  }

  add(obstacleId: string, given: Answered): void {
    const all = [...(this.#by.get(obstacleId) ?? []), given].slice(-MOST_GIVEN);
    this.#by.delete(obstacleId);
    this.#by.set(obstacleId, all);
    const latest = [...this.#by].slice(-MOST).map(([id, list]) => [id, list.slice(-KEPT_GIVEN)]);
    try {
      localStorage.setItem(KEY, JSON.stringify(latest));
    } catch {
      return;
    }
  }
}

/** Those of an earlier program are one for each obstacle. */
function kept(): [string, Answered[]][] {
  try {
    const all = JSON.parse(localStorage.getItem(KEY) ?? '[]') as [string, Answered | Answered[]][];
    return all.map(([id, given]) => [id, [given].flat()]);
  } catch {
    return [];
  }
}

export const answered = new AnsweredQuestions();
