import { COPIES_EXTENSION } from '../archive/exchange.ts';
import { sameJson } from '../archive/same.ts';
import { START_LENGTH, startsAsJson, startsAsTrip } from '../archive/jsonKind.ts';
import { readTrip, tripToJson, tripTooLong } from '../archive/share.ts';
import type { Taken, TakeTracks } from '../archive/filed.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import { load, save } from '../archive/store.ts';
import type { Trip } from '../archive/trip.ts';
import type { Problem, Reading } from '../problem.ts';
import type { Recording, Track } from '../route/track.ts';
import { joinTracks } from '../workers/archive.ts';
import { readArchiveFile, readArchiveFolder } from '../workers/formats.ts';
import { importGpx } from '../workers/import.ts';
import { say } from '../words/words.ts';
import { authorNow } from './author.ts';
import { background } from './background.svelte.ts';
import { newId } from './identity.ts';
import { look } from './look.svelte.ts';
import { mergeFile } from './mergeFile.ts';
import { notices } from './notice.svelte.ts';
import { ARCHIVE, GRADED_TRACKS, TRACK } from './place.ts';
import { isRelief, relief } from './relief.svelte.ts';
import { trackWords, withTrack } from './trackEdit.ts';
import { emptyTrip, open } from './trip.svelte.ts';
import { where } from './where.svelte.ts';

/** What is going on with a file that someone dropped or picked. */
type Stage =
  | { readonly is: 'idle' }
  | { readonly is: 'reading'; readonly file: string; readonly share: number; readonly stop: () => void }
  | {
      readonly is: 'choosing';
      readonly file: string;
      readonly recording: Recording;
      /** What the track is wanted for, as a sentence. */
      readonly purpose: string;
      readonly take: (track: Track) => void;
    };

/** A file or a folder, as it is called in what is said of it. */
type Named = Pick<File, 'name'>;

/** Where a read track goes. */
type Into = 'this trip' | 'a new trip';

class Incoming {
  stage = $state.raw<Stage>({ is: 'idle' });
  /** What was wrong with the last file, until dismissed. */
  problems = $state.raw<{ readonly file: string; readonly list: readonly Problem[] } | null>(null);

  async read(file: File): Promise<void> {
    if (this.stage.is === 'reading') this.stage.stop();
    this.problems = null;
    if (isRelief(file.name)) await this.#readRelief(file);
    else if (/\.pmtiles$/i.test(file.name)) await this.#readBackground(file);
    else if (/\.(gpkg|zip|geojson)$/i.test(file.name))
      await this.#readArchive(file, (take, at, signal) => readArchiveFile(file, take, at, signal));
    else if (file.name.toLowerCase().endsWith(COPIES_EXTENSION)) await this.#readCopies(file);
    else await this.#readByStart(file);
  }

  /** JSON is told apart by what it says that it is; anything else is taken for GPX, whose reader says what is wrong. */
  async #readByStart(file: File): Promise<void> {
    let start: string;
    try {
      start = await file.slice(0, START_LENGTH).text();
    } catch (error) {
      this.problems = { file: file.name, list: [unreadable(error)] };
      return;
    }
    if (startsAsTrip(start)) await this.#readTrip(file);
    else if (startsAsJson(start))
      await this.#readArchive(file, (take, at, signal) => readArchiveFile(file, take, at, signal));
    else await this.#readGpx(file);
  }

  /** Reads a folder of GPX and JSON files, as the archive is written into one. */
  async readFolder(folder: FileSystemDirectoryHandle): Promise<void> {
    if (this.stage.is === 'reading') this.stage.stop();
    this.problems = null;
    await this.#readArchive(folder, (take, at, signal) => readArchiveFolder(folder, take, at, signal));
  }

  /** Reads a recording of which one track is wanted; `take` is given it, and answers what to look at twice. */
  async readRecording(
    file: File,
    purpose: string,
    take: (track: Track) => readonly Problem[],
  ): Promise<void> {
    if (this.stage.is === 'reading') this.stage.stop();
    this.problems = null;
    const recording = await this.#recordingIn(file);
    if (recording === null) return;
    const choose = (track: Track): void => {
      this.stage = { is: 'idle' };
      const problems = [...(this.problems?.list ?? []), ...take(track)];
      if (problems.length > 0) this.problems = { file: file.name, list: problems };
    };
    if (recording.tracks.length === 1) choose(recording.tracks[0]);
    else this.stage = { is: 'choosing', file: file.name, recording, purpose, take: choose };
  }

  /** The track that was asked for goes into the trip. */
  async #take(recording: Recording, track: Track, into: Into): Promise<void> {
    this.stage = { is: 'idle' };
    if (into === 'this trip') {
      open.edit(say.files.loadTrack(track.name), (trip) => withTrack(trip, track, recording.waypoints));
      await open.flush();
    } else {
      const trip = withTrack(
        emptyTrip(track.name || recording.name || say.track.newTrip),
        track,
        recording.waypoints,
      );
      if (!(await open.open(trip))) {
        this.problems = {
          file: trip.name,
          list: [notStored()],
        };
        return;
      }
    }
    where.go(TRACK);
    notices.say(say.files.readTrack(trackWords(track, look.system)));
  }

  leave(): void {
    this.stage = { is: 'idle' };
  }

  async #readGpx(file: File): Promise<void> {
    const recording = await this.#recordingIn(file);
    if (recording === null) return;
    const into = open.now.track === null ? 'this trip' : 'a new trip';
    const take = (track: Track) => void this.#take(recording, track, into);
    const purpose = into === 'this trip' ? say.files.intoThisTrip : say.files.intoNewTrip;
    if (recording.tracks.length === 1) take(recording.tracks[0]);
    else this.stage = { is: 'choosing', file: file.name, recording, purpose, take };
  }

  /** What a GPX file holds, its tracks of two points or more; null where there is none, which is then said. */
  async #recordingIn(file: File): Promise<Recording | null> {
    const stopper = new AbortController();
    const reading = (share: number): Stage => ({
      is: 'reading',
      file: file.name,
      share,
      stop: () => stopper.abort(),
    });
    this.stage = reading(0);
    let answer: Reading<Recording>;
    try {
      answer = await importGpx(file, (bytes) => (this.stage = reading(bytes / file.size)), stopper.signal);
    } catch (error) {
      this.stage = { is: 'idle' };
      if (!stopper.signal.aborted) {
        this.problems = { file: file.name, list: [notReadable(String(error))] };
        return null;
      }
      notices.say(say.files.stopped(file.name));
      return null;
    }
    this.stage = { is: 'idle' };
    if (answer.problems.length > 0) this.problems = { file: file.name, list: answer.problems };
    const tracks = (answer.value?.tracks ?? []).filter((track) => track.length > 1);
    if (answer.value === null || tracks.length === 0) {
      if (answer.problems.length === 0) this.problems = { file: file.name, list: [noTrack()] };
      return null;
    }
    return { ...answer.value, tracks };
  }

  /** Reads with progress and a way to stop; null when stopped, which is then said. */
  async #reading<T>(
    file: Named,
    read: (onProgress: (share: number) => void, signal: AbortSignal) => Promise<T>,
  ): Promise<T | null> {
    const stopper = new AbortController();
    const at = (share: number) =>
      (this.stage = { is: 'reading', file: file.name, share, stop: () => stopper.abort() });
    at(0);
    try {
      return await read(at, stopper.signal);
    } catch (error) {
      if (!stopper.signal.aborted) this.problems = { file: file.name, list: [notReadable(String(error))] };
      else notices.say(say.files.stopped(file.name));
      return null;
    } finally {
      this.stage = { is: 'idle' };
    }
  }

  async #readRelief(file: File): Promise<void> {
    const before = relief.grid;
    const problems = await this.#reading(file, (at, signal) => relief.take(file, at, signal));
    if (problems !== null && problems.length > 0) this.problems = { file: file.name, list: problems };
    if (relief.grid !== before) notices.say(say.files.showsGround(file.name));
  }

  async #readBackground(file: File): Promise<void> {
    const problems = await background.take(file);
    if (problems.length > 0) this.problems = { file: file.name, list: problems };
    else notices.say(say.formats.ground.liesOn(file.name));
  }

  /** Tracks go into the archive as they are read, until all are or someone stops it, trips beside those on this device. */
  async #readArchive(
    file: Named,
    read: (
      take: TakeTracks,
      onProgress: (share: number) => void,
      signal: AbortSignal,
    ) => Promise<Reading<Taken>>,
  ): Promise<void> {
    const problems: Problem[] = [];
    let joined = 0;
    const join = async (tracks: readonly GradedTrack[]): Promise<void> => {
      const some = await joinTracks(tracks, authorNow());
      problems.push(...some.problems);
      joined += some.value?.length ?? 0;
    };
    const answer = await this.#reading(file, (at, signal) => read(join, at, signal));
    problems.unshift(...(answer?.problems ?? []));
    const told: string[] = [];
    if (joined > 0) told.push(say.formats.intoArchive(joined));
    let stored = 0;
    for (const trip of answer?.value?.trips ?? []) {
      const other = await this.#differs(trip);
      const own = other ? { ...trip, id: newId(), name: say.storage.fromFile(trip.name) } : trip;
      const problem = own.id === open.now.id ? notKept() : await save(own, Date.now());
      if (problem === null) stored++;
      else problems.push(problem);
    }
    if (stored > 0) told.push(say.formats.tripsStored(stored));
    if (problems.length > 0) this.problems = { file: file.name, list: problems };
    if (told.length === 0) return;
    where.go(joined > 0 ? GRADED_TRACKS : ARCHIVE);
    notices.say(told.join(' '));
  }

  /** Graded tracks with their history, as another leader or a backup has them, are merged into the archive. */
  async #readCopies(file: File): Promise<void> {
    let tracks = 0;
    const problems: Problem[] = [];
    await this.#reading(file, (at, signal) =>
      mergeFile(
        file,
        (merged) => {
          tracks += merged.value?.length ?? 0;
          problems.push(...merged.problems);
        },
        at,
        signal,
      ),
    );
    // What ended the reading is among them.
    problems.push(...(this.problems?.list ?? []));
    if (problems.length > 0) this.problems = { file: file.name, list: problems };
    if (tracks === 0) return;
    where.go(GRADED_TRACKS);
    notices.say(say.storage.merged(tracks));
  }

  async #readTrip(file: File): Promise<void> {
    const { value, problems } = await tripIn(file);
    if (problems.length > 0) this.problems = { file: file.name, list: problems };
    if (value === null) return;
    const others = await this.#differs(value);
    if (others && (await open.open({ ...value, id: newId(), name: say.storage.fromFile(value.name) })))
      notices.say(say.storage.takenFromFile(value.name));
    else if (!others && (await open.open(value))) notices.say(say.files.opened(value.name));
    else this.problems = { file: file.name, list: [notStored()] };
  }

  /** Whether this device has a trip of the same id that says something else; a file must not be written over it. */
  async #differs(trip: Trip): Promise<boolean> {
    await open.flush();
    const stored = trip.id === open.now.id ? open.now : (await load(trip.id)).value;
    return stored !== null && !sameJson(tripToJson(stored), tripToJson(trip));
  }
}

/** A trip out of its file, which is not read where it is too long. */
async function tripIn(file: File): Promise<Reading<Trip>> {
  try {
    return tripTooLong(file.size) ?? readTrip(await file.text());
  } catch (error) {
    return { value: null, problems: [unreadable(error)] };
  }
}

/** Why the trip on the desk is not stored; null where it is. */
function notKept(): Problem | null {
  return open.keeping.state === 'failed' ? open.keeping.problem : null;
}

function noTrack(): Problem {
  return {
    severity: 'error',
    where: say.files.theFile,
    what: say.files.noTrack,
    done: say.files.noTrackDone,
    times: 1,
  };
}

/** That a file could not be read, as when it was moved away meanwhile or may not be read. */
export function unreadable(error: unknown): Problem {
  const { theFile, cannotRead, chooseAgain } = say.formats;
  const what = cannotRead(error instanceof Error ? error.message : String(error));
  return { severity: 'error', where: theFile, what, done: chooseAgain, times: 1 };
}

function notReadable(fault: string): Problem {
  return {
    severity: 'error',
    where: say.files.theFile,
    what: say.files.notReadable(fault),
    done: say.files.notReadableDone,
    times: 1,
  };
}

function notStored(): Problem {
  return {
    severity: 'error',
    where: say.files.tripOnDesk,
    what: say.files.notStored,
    done: say.files.notStoredDone,
    times: 1,
  };
}

export const incoming = new Incoming();
