import type { Trip } from '../archive/trip.ts';
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
  now = $state.raw<Notice | null>(null);
  #timer: ReturnType<typeof setTimeout> | undefined;

  say(words: string, action?: Notice['action']): void {
    this.dismiss();
    this.now = action === undefined ? { words } : { words, action };
    if (action === undefined) this.#timer = setTimeout(() => this.dismiss(), STAYS_MS);
  }

  /** Says what the last edit did, with the way back until the next edit. */
  offerUndo(words: string): void {
    this.say(words, { name: 'Put it back', run: () => open.undo() });
    this.now = this.now && { ...this.now, whileTrip: open.now };
  }

  dismiss(): void {
    clearTimeout(this.#timer);
    this.now = null;
  }
}

export const notices = new Notices();
