import { boxOfAll } from '../archive/likeness.ts';
import type { Box, TrackRow } from '../archive/trackRow.ts';
import type { Reading } from '../problem.ts';
import { say } from '../words/words.ts';
import { findTracks, regradeTracks, watchArchive } from '../workers/archive.ts';
import { look } from './look.svelte.ts';
import { tell } from './tell.ts';
import type { TrackQuery } from './trackQuery.ts';
import { EVERYTHING, isNarrow, isOld, wantedOf } from './trackQuery.ts';

/** Tracks graded at a time, the archive left free for other questions between them. */
const GRADED_AT_ONCE = 25;

/** While change follows on change, as when many tracks come in, they are looked at together. */
const FOLLOWS_MS = 300;

/** The club's graded tracks: those that answer to what is asked, kept in step with the archive in whatever window. */
class Club {
  query = $state.raw<TrackQuery>(EVERYTHING);
  /** Frame of the map; null until there is one. */
  view = $state.raw<Box | null>(null);
  /** Tracks whose history was found to be damaged when someone opened them, and that did not change since. */
  damaged = $state.raw<ReadonlySet<string>>(new Set());
  #found = $state.raw<readonly TrackRow[] | null>(null);
  #all = $state.raw<readonly TrackRow[]>([]);
  #watching = false;
  #grading = false;
  /** Rows that were to be graded, so that one that cannot be read is not tried for ever. */
  readonly #tried = new Map<string, number>();
  #asked = 0;
  #refreshed = 0;
  #answered = 0;

  /** Rows that were found; null until the archive has answered. */
  get found(): readonly TrackRow[] | null {
    return this.#found;
  }

  get count(): number {
    return this.#all.length;
  }

  get conflictCount(): number {
    return this.#all.reduce((sum, { conflictCount }) => sum + conflictCount, 0);
  }

  /** Around every track that there is. */
  readonly frame = $derived(boxOfAll(this.#all));

  row(id: string): TrackRow | undefined {
    return this.#all.find((row) => row.id === id);
  }

  get rows(): readonly TrackRow[] {
    return this.#all;
  }

  ask(change: Partial<TrackQuery>): void {
    this.query = { ...this.query, ...change };
  }

  /** Notes whether the history of a track was found whole. */
  opened(id: string, isWhole: boolean): void {
    if (this.damaged.has(id) !== isWhole) return;
    this.damaged = new Set(isWhole ? [...this.damaged].filter((one) => one !== id) : [...this.damaged, id]);
  }

  /** Follows the archive from now on. */
  watch(): void {
    if (this.#watching) return;
    this.#watching = true;
    let due = false;
    watchArchive(() => {
      if (due) return;
      due = true;
      setTimeout(() => {
        due = false;
        void this.refresh();
      }, FOLLOWS_MS);
    });
  }

  /** Asks the archive anew; when it resolves, what stands here is no older than the call. */
  async refresh(): Promise<void> {
    this.watch();
    const asked = ++this.#asked;
    const all = await findTracks();
    if (asked < this.#refreshed) return;
    this.#refreshed = asked;
    const known = new Map(this.#all.map(({ id, updatedMs }) => [id, updatedMs]));
    this.#all = all.value ?? [];
    const changed = [...this.damaged].filter((id) => known.get(id) !== this.row(id)?.updatedMs);
    if (changed.length > 0) this.damaged = new Set([...this.damaged].filter((id) => !changed.includes(id)));
    await this.#find(asked, all);
    void this.#gradeNew();
  }

  /** Asks only which of the tracks answer to what is asked now. */
  async search(): Promise<void> {
    if (this.#found === null) return this.refresh();
    await this.#find(++this.#asked);
  }

  async #find(asked: number, all: Reading<readonly TrackRow[]> | null = null): Promise<void> {
    const { query } = this;
    const nowMs = Date.now();
    const asItIs = all !== null && query.sort === EVERYTHING.sort && !isNarrow(query);
    const found = asItIs ? all : await findTracks(wantedOf(query, look.classification, this.view, nowMs));
    if (asked < this.#answered) return;
    this.#answered = asked;
    tell(say.gradedTracks.head, found.problems);
    const rows = found.value ?? [];
    this.#found = query.visited === 'stale' ? rows.filter((row) => isOld(row, nowMs)) : rows;
  }

  /** Gives a grade to rows that have none. */
  async #gradeNew(): Promise<void> {
    const missing = this.#all.filter(
      ({ id, updatedMs, levels }) => Object.keys(levels).length === 0 && this.#tried.get(id) !== updatedMs,
    );
    if (this.#grading || missing.length === 0) return;
    this.#grading = true;
    for (let i = 0; i < missing.length; i += GRADED_AT_ONCE) {
      const rows = missing.slice(i, i + GRADED_AT_ONCE);
      for (const { id, updatedMs } of rows) this.#tried.set(id, updatedMs);
      await regradeTracks(rows.map(({ id }) => id));
    }
    this.#grading = false;
    await this.refresh();
  }
}

export const club = new Club();
