import type { Trip } from '../archive/trip.ts';
import { say } from '../words/words.ts';
import { open } from './trip.svelte.ts';

/** A sentence about what just happened, and the way back where there is one. */
export interface Notice {
  readonly words: string;
  readonly action?: { readonly name: string; readonly run: () => void };
  /** The action is offered only while this trip is on the desk unchanged; absent for always. */
  readonly whileTrip?: Trip;
}

/** How long a sentence stays that offers nothing to do. */
const STAYS_MS = 9000;

class Notices {
  #said = $state.raw<Notice | null>(null);
  #standing = $state.raw<Notice | null>(null);
  #timer: ReturnType<typeof setTimeout> | undefined;

  get now(): Notice | null {
    return this.#said ?? this.#standing;
  }

  /** Whether what is said now stays until it is closed. */
  get isStanding(): boolean {
    return this.#said === null;
  }

  say(words: string, action?: Notice['action']): void {
    clearTimeout(this.#timer);
    this.#said = action === undefined ? { words } : { words, action };
    if (action === undefined) this.#timer = setTimeout(() => this.dismiss(), STAYS_MS);
  }

  /** Says what the last edit did, with the way back until the next edit. */
  offerUndo(words: string): void {
    this.say(words, { name: say.notices.putBack, run: () => open.undo() });
    this.#said = this.#said && { ...this.#said, whileTrip: open.now };
  }

  /** Says what does not pass: it stands whenever nothing else is said, until it is closed. */
  stand(notice: Notice): void {
    this.#standing = notice;
  }

  dismiss(): void {
    clearTimeout(this.#timer);
    if (this.#said === null) this.#standing = null;
    this.#said = null;
  }
}

export const notices = new Notices();
