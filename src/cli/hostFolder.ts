import { createHash } from 'node:crypto';
import { mkdir, open, readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { idOf } from '../archive/gradedReplica.ts';
import { ARCHIVE_LIMITS } from '../archive/limits.ts';
import type { Parcel } from '../archive/parcel.ts';
import { isHeads, parcelOf, unpacked } from '../archive/parcel.ts';
import type { Heads, Replica } from '../archive/replica.ts';
import {
  emptyReplica,
  engineGaveWay,
  engineIsBroken,
  free,
  headsOf,
  putCount,
  replicaFrom,
  replicaToBytes,
} from '../archive/replica.ts';
import { storeWhole } from './storeWhole.ts';

/** A track of the folder, and how far it has got. */
export interface Hosted {
  readonly id: string;
  readonly heads: Heads;
}

/** Why a parcel was not taken in; nothing of it was kept. */
export type NotTaken = 'unknown' | 'damaged' | 'incomplete' | 'too large' | 'broken here';

const EXTENSION = '.track';

/** Bytes of the first line of a file. */
const LINE_BYTES = 100_000;

/**
 * Graded tracks in a folder of the disk: a file each, named by the hash of the track's id. Its first line tells id and
 * heads, so that a list needs no history; then comes the replica. One process at a time may work on a folder.
 */
export class HostFolder {
  readonly #folder: string;
  readonly #hosted = new Map<string, Hosted>();
  #last: Promise<unknown> = Promise.resolve();

  private constructor(folder: string) {
    this.#folder = folder;
  }

  /** Reads the first line of every file, and makes the folder where it is not there. */
  static async at(folder: string): Promise<HostFolder> {
    const tracks = join(folder, 'tracks');
    await mkdir(tracks, { recursive: true });
    const host = new HostFolder(tracks);
    for (const name of await readdir(tracks)) {
      const hosted = name.endsWith(EXTENSION) ? await firstLine(join(tracks, name)) : null;
      if (hosted) host.#hosted.set(hosted.id, hosted);
    }
    return host;
  }

  list(): readonly Hosted[] {
    return [...this.#hosted.values()];
  }

  /**
   * Takes in what a parcel brings to a track and answers with what its sender lacks. One after the other: what is answered
   * lies on the disk, and nobody's changes are written over. Once the engine gave way nothing is taken in any more.
   */
  exchange(id: string, parcel: Parcel): Promise<Parcel | NotTaken> {
    const answer = this.#last
      .then(() => (engineIsBroken() ? 'broken here' : this.#exchange(id, parcel)))
      .catch((error: unknown): NotTaken => {
        if (engineGaveWay(error)) return 'broken here';
        throw error;
      });
    this.#last = answer.catch(() => undefined);
    return answer;
  }

  async #exchange(id: string, parcel: Parcel): Promise<Parcel | NotTaken> {
    const name = nameOf(id);
    const filed = await bytesOf(join(this.#folder, name));
    const brings = parcel.changes.length > 0;
    if (filed === null && !brings) return 'unknown';
    if (filed === null && this.#hosted.size >= ARCHIVE_LIMITS.tracks) return 'too large';
    const now = filed === null ? emptyReplica() : replicaFrom([filed]);
    if (now === null) return 'broken here';
    if (!brings) return answered(now, parcel);
    const before = headsOf(now);
    const next = unpacked(now, parcel);
    if (next === null) return engineIsBroken() ? 'broken here' : 'incomplete';
    try {
      const heads = headsOf(next);
      if (!heads.every((head) => before.includes(head))) {
        if (putCount(next) > ARCHIVE_LIMITS.replicaPuts) return 'too large';
        if (idOf(next) !== id) return 'damaged';
        const bytes = replicaToBytes(next);
        if (bytes.length > ARCHIVE_LIMITS.replicaBytes) return 'too large';
        const line = new TextEncoder().encode(`${JSON.stringify({ id, heads })}\n`);
        await storeWhole(this.#folder, name, [line, bytes]);
        this.#hosted.set(id, { id, heads });
      }
      return parcelOf(next, parcel.heads, parcel.base);
    } finally {
      free(next);
    }
  }
}

function answered(replica: Replica, { heads, base }: Parcel): Parcel {
  const parcel = parcelOf(replica, heads, base);
  free(replica);
  return parcel;
}

function nameOf(id: string): string {
  return `${createHash('sha256').update(id).digest('hex')}${EXTENSION}`;
}

/** Of a replica, without the line before it; null where there is no such file. */
async function bytesOf(path: string): Promise<Uint8Array | null> {
  try {
    const bytes = await readFile(path);
    return bytes.subarray(bytes.indexOf(10) + 1);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

async function firstLine(path: string): Promise<Hosted | null> {
  const file = await open(path);
  try {
    const { size } = await stat(path);
    const { buffer, bytesRead } = await file.read(Buffer.alloc(Math.min(size, LINE_BYTES)), 0);
    const text = new TextDecoder().decode(buffer.subarray(0, bytesRead));
    const { id, heads } = JSON.parse(text.slice(0, text.indexOf('\n'))) as Partial<Hosted>;
    return typeof id === 'string' && isHeads(heads) ? { id, heads } : null;
  } catch {
    return null;
  } finally {
    await file.close();
  }
}
