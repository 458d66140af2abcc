import { SvelteMap } from 'svelte/reactivity';
import { photosOf } from '../archive/photoRecord.ts';
import { knownOf, load, save } from '../archive/store.ts';
import type { StoreProblem } from '../archive/storeProblem.ts';
import type { Trip } from '../archive/trip.ts';
import type { Problem } from '../problem.ts';
import { say } from '../words/words.ts';
import type { Draft } from './drafts.ts';
import { draftsOf, keepDrafts } from './drafts.ts';
import type { History } from './history.ts';
import { begin, redo, seal, step, undo } from './history.ts';
import { newId } from './identity.ts';
import { clearOwn, leaveBehind } from './leftover.ts';

/** Whether the trip on screen is in the device's store. */
export type Keeping =
  { readonly state: 'kept' | 'waiting' } | { readonly state: 'failed'; readonly problem: StoreProblem };

/** Pause in typing after which the trip is stored; what is lost if the device dies is at most this. Photos do not wait. */
const STORE_AFTER_MS = 300;

export function emptyTrip(name = say.track.newTrip): Trip {
  return {
    id: newId(),
    name,
    note: '',
    radioChannel: '',
    direction: 'as recorded',
    track: null,
    waypoints: [],
    obstacles: [],
    heldGrips: [],
    vehicles: [],
  };
}

/** The open trip: one value, replaced by every edit, undone and redone whole, stored by itself. */
class OpenTrip {
  #history = $state.raw<History<Trip>>(begin(emptyTrip()));
  #keeping = $state.raw<Keeping>({ state: 'kept' });
  /** The trip as this window last stored or loaded it; null where the store has none of it yet. */
  #stored: Trip | null = null;
  /** Counts what was given to the store, which takes one after another. */
  #given = 0;
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
    this.lay(trip);
    await this.flush();
    return true;
  }

  /** A trip on a desk where nothing lies that is not stored. It is stored by itself, which nobody waits for. */
  lay(trip: Trip): void {
    this.#put(trip);
    this.#wait();
  }

  /** A stored trip on the desk; null, or why it could not be. */
  async openStored(id: string): Promise<readonly Problem[] | null> {
    for (;;) {
      if (!(await this.#leave())) return this.#keeping.state === 'failed' ? [this.#keeping.problem] : [];
      const { value, problems } = await load(id);
      if (value === null) return problems;
      // What was entered while it was read is stored first, and may be of this very trip.
      if (this.#keeping.state !== 'kept') continue;
      this.#putStored(value);
      return problems.length > 0 ? problems : null;
    }
  }

  /** The stored trip instead of the one on the desk, which cannot be stored and was given up; null, or why not. */
  async takeStored(): Promise<readonly Problem[] | null> {
    const { value, problems } = await load(this.now.id);
    if (value === null) return problems;
    this.#putStored(value);
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

  holdDraft(box: string, draft: Draft | null): void {
    if (draft === null) this.drafts.delete(box);
    else this.drafts.set(box, draft);
    keepDrafts(this.now.id, this.drafts);
  }

  /** Stores what waits, at once. It is kept once the last that was given to the store is, and is what lies on the desk. */
  async flush(): Promise<void> {
    clearTimeout(this.#timer);
    if (this.#keeping.state === 'kept') return;
    const trip = this.now;
    const given = ++this.#given;
    const problem = await save(trip, Date.now());
    if (problem === null && trip.id === this.now.id) this.#stored = trip;
    if (given !== this.#given) return;
    if (problem !== null) this.#keeping = { state: 'failed', problem };
    else if (trip === this.now) {
      this.#keeping = { state: 'kept' };
      rememberOpen(trip.id);
      clearOwn(trip.id);
    }
  }

  async #leave(): Promise<boolean> {
    do await this.flush();
    while (this.#keeping.state === 'waiting');
    return this.#keeping.state === 'kept';
  }

  #put(trip: Trip): void {
    clearTimeout(this.#timer);
    this.#given++;
    this.#history = begin(trip);
    this.#stored = null;
    this.drafts.clear();
    for (const [box, draft] of draftsOf(trip.id)) this.drafts.set(box, draft);
  }

  #putStored(trip: Trip): void {
    this.#put(trip);
    this.#stored = trip;
    this.#keeping = { state: 'kept' };
    rememberOpen(trip.id);
  }

  /** Whether something would be gone with the page that `leave` cannot leave behind, or that the store does not take. */
  get wouldBeLost(): boolean {
    const { state } = this.#keeping;
    return state === 'failed' || (state === 'waiting' && !this.#isLight());
  }

  /** The page may go away at any moment now. */
  leave(): void {
    if (this.#keeping.state === 'kept') return;
    const { id, track } = this.now;
    leaveBehind(this.now, track === null || track === this.#stored?.track, knownOf(id), Date.now());
    void this.flush();
  }

  #become(history: History<Trip>): void {
    if (history === this.#history) return;
    this.#history = history;
    this.#wait();
  }

  /** Whether the store has the track and all images already; these are all that `leave` cannot leave behind. */
  #isLight(): boolean {
    const [{ track, obstacles }, stored] = [this.now, this.#stored];
    if (track !== null && track !== stored?.track) return false;
    const images = new Set(photosOf(stored?.obstacles ?? []).map(({ image }) => image));
    return photosOf(obstacles).every(({ image }) => images.has(image));
  }

  #wait(): void {
    this.#keeping = { state: 'waiting' };
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), this.#isLight() ? STORE_AFTER_MS : 0);
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
// The browser then asks whether to leave.
addEventListener('beforeunload', (event) => {
  if (open.wouldBeLost) event.preventDefault();
});
