import { SvelteMap } from 'svelte/reactivity';
import type { Answered } from './presetEdit.ts';

const KEY = 'rutline.answered';
/** Obstacles whose answers are remembered; the ground itself is in the trip. */
const MOST = 200;

/** Answers to preset questions by obstacle, so that the questions can be shown again as they were answered. */
class AnsweredQuestions {
  readonly #by = new SvelteMap<string, Answered>(kept());

  of(obstacleId: string): Answered | undefined {
    return this.#by.get(obstacleId);
  }

  set(obstacleId: string, given: Answered): void {
    this.#by.delete(obstacleId);
    this.#by.set(obstacleId, given);
    try {
      localStorage.setItem(KEY, JSON.stringify([...this.#by].slice(-MOST)));
    } catch {
      return;
    }
  }

  forget(obstacleId: string): void {
    this.#by.delete(obstacleId);
  }
}

function kept(): [string, Answered][] {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '[]') as [string, Answered][];
  } catch {
    return [];
  }
}

export const answered = new AnsweredQuestions();
