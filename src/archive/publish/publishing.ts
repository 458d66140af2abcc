import { gzipSync } from 'fflate';
import { gradedRecord } from '../gradedRecord.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { levelsOf } from '../levels.ts';
import { recordToJson } from '../share.ts';
import { trackRowOf } from '../trackRow.ts';
import { hashOf } from './hash.ts';
import { INDEX_NAME, RECORDS_ENDING, ZOOM } from './published.ts';
import type { Placed } from './publishedIndex.ts';
import { indexOf } from './publishedIndex.ts';
import { tileOf, tilesAlong } from './webTile.ts';
import { withoutPeople } from './withoutPeople.ts';

/** A file to be put on a web host, in pieces. */
export interface HostFile {
  readonly name: string;
  readonly pieces: readonly Uint8Array<ArrayBuffer>[];
  readonly size: number;
}

export interface PublishedFiles {
  /** Records one after the other, each packed by itself, so that one can be read alone; to be put there first. */
  readonly records: HostFile;
  /** The file that is asked first. It names the other. */
  readonly index: HostFile;
  readonly trackCount: number;
  /** Names of tracks that have no place, and so cannot be published. */
  readonly nowhere: readonly string[];
}

/** Takes tracks one after the other, of which only the packed records are held, and makes the two files of them. */
export class Publishing {
  readonly #pieces: Uint8Array<ArrayBuffer>[] = [];
  readonly #placed: Placed[] = [];
  readonly #nowhere: string[] = [];
  #size = 0;

  add(graded: GradedTrack): void {
    const bare = withoutPeople(graded);
    const { id, name, area, box, lengthM, obstacleCount, lastVisitMs } = trackRowOf(bare, 0, 0);
    if (box === null) {
      this.#nowhere.push(name);
      return;
    }
    const bytes = gzipSync(new TextEncoder().encode(recordToJson(gradedRecord(bare))), { mtime: 0 });
    const record = [this.#size, bytes.length] as const;
    const levels = levelsOf(bare);
    const hash = hashOf([bytes]);
    const [west, south, east, north] = box;
    const obstacles = bare.surveyed.map(({ obstacle: { lng, lat } }) => ({ lng: [lng], lat: [lat] }));
    this.#placed.push({
      row: { id, name, area, box, lengthM, obstacleCount, lastVisitMs, levels, record, hash },
      tiles: tilesAlong(
        tileOf((west + east) / 2, (south + north) / 2, ZOOM),
        bare.track ? [bare.track, ...obstacles] : obstacles,
        ZOOM,
      ),
    });
    this.#pieces.push(bytes);
    this.#size += bytes.length;
  }

  files(): PublishedFiles {
    const name = `${hashOf(this.#pieces)}${RECORDS_ENDING}`;
    const index = indexOf(this.#placed, name);
    return {
      records: { name, pieces: this.#pieces, size: this.#size },
      index: { name: INDEX_NAME, pieces: [index], size: index.length },
      trackCount: this.#placed.length,
      nowhere: this.#nowhere,
    };
  }
}
