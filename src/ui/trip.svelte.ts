import { SvelteMap } from 'svelte/reactivity';
import { load, save } from '../archive/store.ts';
import type { StoreProblem } from '../archive/storeProblem.ts';
import type { Trip } from '../archive/trip.ts';
import type { Problem } from '../problem.ts';
import type { Track } from '../route/track.ts';
import { say } from '../words/words.ts';
import type { Draft } from './drafts.ts';
import { draftsOf, keepDrafts } from './drafts.ts';
import type { History } from './history.ts';
import { begin, redo, seal, step, undo } from './history.ts';
import { newId } from './identity.ts';
import { clearLeftover, leaveBehind } from './leftover.ts';

/** Whether the trip on screen is in the device's store. */
export type Keeping =
  { readonly state: 'kept' | 'waiting' } | { readonly state: 'failed'; readonly problem: StoreProblem };

/** Pause in typing after which the trip is stored; what is lost if the device dies is at most this. */
const STORE_AFTER_MS = 300;

export function emptyTrip(name = say.track.newTrip): Trip {
  return {
    id: newId(),
    name,
    note: '',
    direction: 'as recorded',
    track: null,
    waypoints: [],
    obstacles: [],
    vehicles: [],
  };
}

/** The open trip: one value, replaced by every edit, undone and redone whole, stored by itself. */
class OpenTrip {
  #history = $state.raw<History<Trip>>(begin(emptyTrip()));
  #keeping = $state.raw<Keeping>({ state: 'kept' });
  /** The track as the store has it; undefined where it has none of this trip. */
  #storedTrack: Track | null | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Texts in boxes that are no valid value yet, by box. The trip keeps the last good value meanwhile. */
  readonly drafts = new SvelteMap<string, Draft>();

  get now(): Trip {
    return this.#history.now;
  }

  get keeping(): Keeping {
    return this.#keeping;
  }

  /** What undo would take back, or null. */
  get undoes(): string | null {
    return this.#history.past.at(-1)?.what ?? null;
  }

  get redoes(): string | null {
    return this.#history.future[0]?.what ?? null;
  }

  /** Replaces the trip. Edits in a row with the same key (typing in one box) are undone as one. */
  edit(what: string, change: (trip: Trip) => Trip, key: string | null = null): void {
    this.#become(step(this.#history, change(this.now), what, key));
  }

  /** Leaving a box: what is typed next is a step of its own. */
  seal(): void {
    this.#history = seal(this.#history);
  }

  undo(): void {
    this.#become(undo(this.#history));
  }

  redo(): void {
    this.#become(redo(this.#history));
  }

  /** Another trip on the desk; false where the one before cannot be stored, which then stays on the desk. */
  async open(trip: Trip): Promise<boolean> {
    if (!(await this.#leave())) return false;
    this.#put(trip);
    this.#wait();
    await this.flush();
    return true;
  }

  /** A stored trip on the desk; null, or why it could not be. */
  async openStored(id: string): Promise<readonly Problem[] | null> {
    if (!(await this.#leave())) return this.#keeping.state === 'failed' ? [this.#keeping.problem] : [];
    const { value, problems } = await load(id);
    if (value === null) return problems;
    this.#put(value);
    this.#storedTrack = value.track;
    this.#keeping = { state: 'kept' };
    return problems.length > 0 ? problems : null;
  }

  /** The trip on the desk under a name of its own, where another window has stored it under the old one. */
  async keepBoth(): Promise<void> {
    this.edit(say.header.step.keepBoth, (trip) => ({
      ...trip,
      id: newId(),
      name: say.notices.copyOf(trip.name),
    }));
    await this.flush();
  }

  /** Takes what is on the desk for given up: it could not be stored, and someone said so. */
  giveUp(): void {
    this.#keeping = { state: 'kept' };
  }

  holdDraft(box: string, draft: Draft | null): void {
    if (draft === null) this.drafts.delete(box);
    else this.drafts.set(box, draft);
    keepDrafts(this.now.id, this.drafts);
  }

  /** Stores what waits, at once. */
  async flush(): Promise<void> {
    clearTimeout(this.#timer);
    if (this.#keeping.state === 'kept') return;
    const trip = this.now;
    const problem = await save(trip, Date.now());
    if (problem === null && trip.id === this.now.id) this.#storedTrack = trip.track;
    if (problem !== null) this.#keeping = { state: 'failed', problem };
    else if (trip === this.now) {
      this.#keeping = { state: 'kept' };
      clearLeftover();
    }
  }

  async #leave(): Promise<boolean> {
    await this.flush();
    return this.#keeping.state !== 'failed';
  }

  #put(trip: Trip): void {
    this.#history = begin(trip);
    this.#storedTrack = undefined;
    this.drafts.clear();
    for (const [box, draft] of draftsOf(trip.id)) this.drafts.set(box, draft);
    rememberOpen(trip.id);
  }

  /** The page may go away at any moment now. */
  leave(): void {
    if (this.#keeping.state === 'kept') return;
    const { track } = this.now;
    leaveBehind(this.now, track === null || track === this.#storedTrack, Date.now());
    void this.flush();
  }

  #become(history: History<Trip>): void {
    if (history === this.#history) return;
    this.#history = history;
    this.#wait();
  }

  #wait(): void {
    this.#keeping = { state: 'waiting' };
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), STORE_AFTER_MS);
  }
}

const OPEN = 'rutline.open';

/** Which trip was on the desk when the page was closed. */
export function lastOpen(): string | null {
  try {
    return localStorage.getItem(OPEN);
  } catch {
    return null;
  }
}

function rememberOpen(id: string): void {
  try {
    localStorage.setItem(OPEN, id);
  } catch {
    return;
  }
}

export const open = new OpenTrip();

addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') open.leave();
});
addEventListener('pagehide', () => open.leave());
