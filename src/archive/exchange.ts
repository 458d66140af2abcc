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

/** The first line says what the file is; then comes each track, its length in bytes (32 bits, little end first) before it. */
export function copiesToBytes(tracks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const head = new TextEncoder().encode(`${FORMAT} ${VERSION}\n`);
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
  if (bytes.length > ARCHIVE_LIMITS.fileBytes)
    return refused(say.gradedFile.tooLarge, say.gradedFile.fewerTracks);
  const line = lineOf(bytes);
  const [format, version] = line.split(' ');
  if (format !== FORMAT)
    return refused(say.gradedFile.noCopies, say.gradedFile.noCopiesDone(COPIES_EXTENSION));
  if (Number(version) !== VERSION) return refused(say.gradedFile.otherVersion, say.tripFile.update);
  const problems: Problem[] = [];
  const copies: Copy[] = [];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  let at = line.length + 1;
  for (let n = 1; at < bytes.length; n++) {
    const length = at + 4 <= bytes.length ? view.getUint32(at, true) : NaN;
    if (!(at + 4 + length <= bytes.length) || n > ARCHIVE_LIMITS.tracks) {
      problems.push(problem(say.gradedFile.track(n), say.gradedFile.endsEarly, say.gradedFile.copyAgain));
      break;
    }
    const copy = copyFrom(bytes.subarray(at + 4, at + 4 + length));
    if (copy) copies.push(copy);
    else problems.push(problem(say.gradedFile.track(n), say.gradedFile.damaged, say.gradedFile.damagedDone));
    at += 4 + length;
  }
  return copies.length === 0 && problems.length > 0 ? { value: null, problems } : { value: copies, problems };
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

function refused(what: string, done: string): Reading<readonly Copy[]> {
  return { value: null, problems: [problem(say.problem.theFile, what, done)] };
}
