import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { FoundIn, Published } from '../archive/publish/lookInto.ts';
import type { PublishedRow } from '../archive/publish/published.ts';
import type { TroubleWord } from '../archive/publish/trouble.ts';
import type { Box, TrackRow } from '../archive/trackRow.ts';
import { PublishedReader } from '../workers/published.ts';
import { mayBeginAnew } from './beginAnew.ts';
import { mayFetch } from './pagePolicy.ts';
import { forgetArchive, goTo, isWithheld, keepArchive, keptArchives, takeGoing } from './publishedAddress.ts';
import { tell } from './tell.ts';

/** The published archive that is being read: nothing of it before someone asks for it. */
class PublishedArchive {
  /** Addresses that were read before. */
  known = $state.raw(keptArchives());
  address = $state.raw<string | null>(null);
  /** Null until it has answered. */
  about = $state.raw<Pick<Published, 'trackCount' | 'box'> | null>(null);
  found = $state.raw<FoundIn | null>(null);
  /** Of the archive or of the area; null where all is well. */
  trouble = $state.raw<TroubleWord | null>(null);
  readBytes = $state(0);
  /** Questions that are not answered yet. */
  asking = $state(0);
  /** The track that is looked at, once it has come, or why it does not. */
  taken = $state.raw<{ readonly id: string; readonly got: GradedTrack | TroubleWord | null } | null>(null);
  #reader: PublishedReader | null = null;
  #view: Box | null = null;
  /** Rows that were told of, so that a track stays open when the map moves on. */
  #rows = new Map<string, PublishedRow>();

  /** Opens the archive at an address that someone asked for; where the page may not fetch from it, it is loaded again. */
  async lookInto(url: URL): Promise<void> {
    this.close();
    this.address = url.href;
    if (isWithheld(url, location)) {
      this.trouble = 'onlyHttps';
      return;
    }
    if (!mayFetch(url)) {
      if (!(await mayBeginAnew())) {
        this.close();
        return;
      }
      goTo(url.href);
      location.reload();
      return;
    }
    const reader = new PublishedReader(url, (bytes) => (this.readBytes += bytes));
    this.#reader = reader;
    const got = await this.#asked(reader.open());
    if (reader !== this.#reader) return;
    if ('trouble' in got) {
      this.trouble = got.trouble;
      return;
    }
    this.about = got.value;
    keepArchive(url.href);
    this.known = keptArchives();
  }

  /** Goes on with what was asked for before the page was loaded again. */
  goOn(): void {
    const going = takeGoing();
    if (going !== null) void this.lookInto(new URL(going));
  }

  again(): void {
    if (this.address !== null) void this.lookInto(new URL(this.address));
  }

  close(): void {
    this.#reader?.close();
    this.#reader = null;
    [this.address, this.about, this.found, this.trouble, this.taken] = [null, null, null, null, null];
    [this.readBytes, this.asking] = [0, 0];
    this.#view = null;
    this.#rows = new Map();
  }

  forget(address: string): void {
    forgetArchive(address);
    this.known = keptArchives();
  }

  /** Reads what an area holds; of areas that are asked for meanwhile only the last is shown. */
  async lookAt(view: Box): Promise<void> {
    const reader = this.#reader;
    if (reader === null) return;
    this.#view = view;
    const got = await this.#asked(reader.inBox(view));
    if (reader !== this.#reader || view !== this.#view) return;
    this.trouble = 'trouble' in got ? got.trouble : null;
    if ('trouble' in got) return;
    this.found = got.value;
    for (const row of got.value.rows) this.#rows.set(row.id, row);
  }

  /** Reads a track that was told of, unless it is here or on its way; one that was not told of is not there. */
  async take(id: string): Promise<void> {
    const [reader, row] = [this.#reader, this.#rows.get(id)];
    if (this.taken?.id === id && typeof this.taken.got !== 'string') return;
    if (reader === null || row === undefined) {
      this.taken = null;
      return;
    }
    this.taken = { id, got: null };
    const got = await this.#asked(reader.take(row));
    if (reader !== this.#reader || this.taken?.id !== id) return;
    if ('trouble' in got) this.taken = { id, got: got.trouble };
    else {
      tell(row.name, got.value.problems);
      this.taken = { id, got: got.value.value ?? 'brokenRecord' };
    }
  }

  async #asked<T>(asked: Promise<T>): Promise<T> {
    this.asking++;
    const answer = await asked;
    this.asking = Math.max(0, this.asking - 1);
    return answer;
  }
}

/** A published row as a row of the list. */
export function asTrackRow(row: PublishedRow): TrackRow {
  return { ...row, visitCount: 0, outcomeCount: 0, conflictCount: 0, updatedMs: 0 };
}

export const publishedArchive = new PublishedArchive();
