import { levelsOf } from '../archive/levels.ts';
import { boxOfAll } from '../archive/likeness.ts';
import type { Box, TrackRow } from '../archive/trackRow.ts';
import { say } from '../words/words.ts';
import { findTracks, gradeTrack, takeTracksBare, watchArchive } from '../workers/archive.ts';
import { look } from './look.svelte.ts';
import { tell } from './tell.ts';
import type { TrackQuery } from './trackQuery.ts';
import { EVERYTHING, isOld, wantedOf } from './trackQuery.ts';

/** Tracks graded at a time, the page left free between them. */
const GRADED_AT_ONCE = 4;

/** The club's graded tracks: those that answer to what is asked, kept in step with the archive in whatever window. */
class Club {
  query = $state.raw<TrackQuery>(EVERYTHING);
  /** Frame of the map; null until there is one. */
  view = $state.raw<Box | null>(null);
  #found = $state.raw<readonly TrackRow[] | null>(null);
  #all = $state.raw<readonly TrackRow[]>([]);
  #watching = false;
  #grading = false;
  /** Rows that were to be graded, so that one that cannot be read is not tried for ever. */
  readonly #tried = new Map<string, number>();
  #asked = 0;
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

  /** Follows the archive from now on. */
  watch(): void {
    if (this.#watching) return;
    this.#watching = true;
    watchArchive(() => {
      if (!this.#grading) void this.refresh();
    });
  }

  /** Asks the archive anew; when it resolves, what stands here is no older than the call. */
  async refresh(): Promise<void> {
    this.watch();
    const asked = ++this.#asked;
    const nowMs = Date.now();
    const [all, found] = await Promise.all([
      findTracks(),
      findTracks(wantedOf(this.query, look.classification, this.view, nowMs)),
    ]);
    if (asked < this.#answered) return;
    this.#answered = asked;
    tell(say.gradedTracks.head, [...all.problems, ...found.problems]);
    const rows = found.value ?? [];
    this.#all = all.value ?? [];
    this.#found = this.query.visited === 'stale' ? rows.filter((row) => isOld(row, nowMs)) : rows;
    void this.#gradeNew();
  }

  /** Gives a grade to rows that have none, by sizes alone, which takes no time to speak of. */
  async #gradeNew(): Promise<void> {
    const missing = this.#all.filter(
      ({ id, updatedMs, levels }) => Object.keys(levels).length === 0 && this.#tried.get(id) !== updatedMs,
    );
    if (this.#grading || missing.length === 0) return;
    this.#grading = true;
    for (let i = 0; i < missing.length; i += GRADED_AT_ONCE) {
      const rows = missing.slice(i, i + GRADED_AT_ONCE);
      for (const { id, updatedMs } of rows) this.#tried.set(id, updatedMs);
      const { value } = await takeTracksBare(rows.map(({ id }) => id));
      for (const track of value ?? []) {
        const row = rows.find(({ id }) => id === track.id);
        if (row) await gradeTrack(track.id, row.updatedMs, levelsOf(track));
      }
    }
    this.#grading = false;
    await this.refresh();
  }
}

export const club = new Club();
