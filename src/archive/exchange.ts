import type { Problem, Reading } from '../problem.ts';
import { ARCHIVE_LIMITS } from './limits.ts';
import type { Replica } from './replica.ts';
import { free, heldBy, putCount, replicaFrom } from './replica.ts';
import { plainOf } from './heldKey.ts';
import { say } from '../words/words.ts';

/** How the files are called in which graded tracks go from device to device with their history. */
export const COPIES_EXTENSION = '.rutline-tracks';

const FORMAT = 'rutline-graded-tracks';
const VERSION = 1;

function headOf(): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(`${FORMAT} ${VERSION}\n`);
}

/** The first line says what the file is; then comes each track, its length in bytes (32 bits, little end first) before it. */
export function copiesToBytes(tracks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const head = headOf();
  const bytes = new Uint8Array(tracks.reduce((sum, { length }) => sum + 4 + length, head.length));
  const view = new DataView(bytes.buffer);
  bytes.set(head);
  let at = head.length;
  for (const track of tracks) {
    view.setUint32(at, track.length, true);
    bytes.set(track, at + 4);
    at += 4 + track.length;
  }
  return bytes;
}

/** One track, given in pieces, as it stands in such a file. */
export function copyBlob(pieces: readonly Uint8Array<ArrayBuffer>[]): Blob {
  const length = new DataView(new ArrayBuffer(4));
  const sum = pieces.reduce((bytes, piece) => bytes + piece.length, 0);
  length.setUint32(0, sum, true);
  return new Blob([length.buffer, ...pieces]);
}

/** The same file of any size. */
export function copiesBlob(tracks: readonly Blob[]): Blob {
  return new Blob([headOf(), ...tracks]);
}

/**
 * A file of any size as files of some `bytes` each, or of one track that is larger; the last has what cannot be told apart.
 * A track that says that it is larger than any is not read: a problem stands in its place.
 */
export async function* partsOfCopies(
  file: Blob,
  bytes: number,
): AsyncGenerator<Uint8Array<ArrayBuffer> | Problem> {
  const head = headOf();
  const read = async (begin: number, end: number): Promise<Uint8Array<ArrayBuffer>> =>
    new Uint8Array(await file.slice(begin, end).arrayBuffer());
  const line = lineOf(await read(0, 60));
  let from = line.length + 1;
  if (!line.startsWith(`${FORMAT} `) || from !== head.length) {
    yield await read(0, bytes);
    return;
  }
  const part = async (end: number) =>
    new Uint8Array(await new Blob([head, file.slice(from, end)]).arrayBuffer());
  for (let at = from, n = 1; at < file.size; n++) {
    const claim = await read(at, at + 4);
    const length = claim.length === 4 ? new DataView(claim.buffer).getUint32(0, true) : NaN;
    const end = at + 4 + length < file.size ? at + 4 + length : file.size;
    if (length > ARCHIVE_LIMITS.replicaBytes) {
      if (at > from) yield await part(at);
      const what = say.formats.tooLarge(length, ARCHIVE_LIMITS.replicaBytes);
      yield problem(say.gradedFile.track(n), what, say.gradedFile.damagedDone);
      from = end;
    } else if (end - from >= bytes || end === file.size) {
      yield await part(end);
      from = end;
    }
    at = end;
  }
}

/** A graded track out of a file, with its history. */
export interface Copy {
  readonly id: string;
  readonly replica: Replica;
}

/** Whether a file begins as one of ours. */
export function isCopies(bytes: Uint8Array): boolean {
  return lineOf(bytes).startsWith(`${FORMAT} `);
}

/** Reads such a file. What is damaged is left out and said; null where nothing of it can be read. */
export function copiesFrom(bytes: Uint8Array): Reading<readonly Copy[]> {
  const all = [...eachCopy(bytes)];
  const copies = all.filter(isCopy);
  const problems = all.filter((one): one is Problem => !isCopy(one));
  return { value: copies.length === 0 && problems.length > 0 ? null : copies, problems };
}

/** The same, one track after the other, or what is wrong with it: one that is freed takes no memory while the next is read. */
export function* eachCopy(bytes: Uint8Array): Generator<Copy | Problem, void> {
  const line = lineOf(bytes);
  const fault = faultOf(bytes, line);
  if (fault !== null) {
    yield fault;
    return;
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let at = line.length + 1;
  for (let n = 1; at < bytes.length; n++) {
    const length = at + 4 <= bytes.length ? view.getUint32(at, true) : NaN;
    if (!(at + 4 + length <= bytes.length) || n > ARCHIVE_LIMITS.tracks) {
      yield problem(say.gradedFile.track(n), say.gradedFile.endsEarly, say.gradedFile.copyAgain);
      return;
    }
    yield (
      copyFrom(bytes.subarray(at + 4, at + 4 + length)) ??
      problem(say.gradedFile.track(n), say.gradedFile.damaged, say.gradedFile.damagedDone)
    );
    at += 4 + length;
  }
}

export function isCopy(one: Copy | Problem): one is Copy {
  return 'replica' in one;
}

/** Why a file cannot be one of ours, of this version; null where it can. */
function faultOf({ length }: Uint8Array, line: string): Problem | null {
  const { tooLarge, fewerTracks, noCopies, noCopiesDone, otherVersion } = say.gradedFile;
  const [format, version] = line.split(' ');
  const refused = (what: string, done: string) => problem(say.problem.theFile, what, done);
  if (length > ARCHIVE_LIMITS.fileBytes) return refused(tooLarge, fewerTracks);
  if (format !== FORMAT) return refused(noCopies, noCopiesDone(COPIES_EXTENSION));
  return Number(version) === VERSION ? null : refused(otherVersion, say.tripFile.update);
}

function copyFrom(bytes: Uint8Array): Copy | null {
  if (bytes.length > ARCHIVE_LIMITS.replicaBytes) return null;
  const replica = replicaFrom([bytes]);
  if (replica === null) return null;
  const id = plainOf(heldBy(replica).get('id')?.[0]);
  if (
    typeof id === 'string' &&
    id !== '' &&
    id.length <= 200 &&
    putCount(replica) <= ARCHIVE_LIMITS.replicaPuts
  )
    return { id, replica };
  free(replica);
  return null;
}

/** The first line, if it is short enough to be one of ours. */
function lineOf(bytes: Uint8Array): string {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 60));
  return start.includes('\n') ? start.slice(0, start.indexOf('\n')) : '';
}

function problem(where: string, what: string, done: string): Problem {
  return { severity: 'error', where, what, done, times: 1 };
}
