import type { Backup, BackupFile } from '../archive/backup.ts';
import { backupsIn, backUp, folderFault } from '../archive/backup.ts';
import { tripToJson } from '../archive/share.ts';
import { list } from '../archive/store.ts';
import type { Trip } from '../archive/trip.ts';
import { say } from '../words/words.ts';
import { watchArchive } from '../workers/archive.ts';
import { archiveNow } from './archiveBackup.ts';
import type { Folder } from './backupFolder.ts';
import { chooseFolder, chosenFolder, folderPicker } from './backupFolder.ts';
import { DEMO_ID } from './demo.ts';
import { notices } from './notice.svelte.ts';
import { open } from './trip.svelte.ts';
import { saveTripFile } from './tripFile.ts';

/** Something to back up as it is now. */
export interface Backed {
  /** Another value (by ===) once it has changed; what is text is remembered beyond the page. */
  readonly version: unknown;
  /** Rejects where it cannot be read. */
  readonly make: () => Backup | Promise<Backup>;
}

/** Null while there is nothing. */
export type Source = () => Backed | null | Promise<Backed | null>;

const EVERY_MS = 5 * 60_000;
const WEEK_MS = 7 * 24 * 3_600_000;
const SAVED = 'rutline.savedAt';
const ARCHIVE_SAVED = 'rutline.archiveSaved';

/** Backups into a folder that someone chose, by themselves; without such a folder, by hand. */
class Backups {
  /** Whether the browser cannot, nobody chose a folder, the browser wants to be asked again, or they go on. */
  state = $state<'not able' | 'off' | 'asks' | 'on'>('off');
  folderName = $state('');
  lastMs = $state.raw<number | null>(null);
  /** Why the last one was not written. */
  fault = $state('');
  #folder: Folder | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> = Promise.resolve();
  readonly #written = new Map<Source, unknown>();
  readonly #sources: readonly Source[] = [openTrip, archiveNow];

  /** Takes up the folder that was chosen before, and watches what is stored. */
  async begin(): Promise<void> {
    this.lastMs = savedAt();
    this.#written.set(archiveNow, kept(ARCHIVE_SAVED));
    watchArchive(() => this.changed());
    if (folderPicker() === undefined) this.state = 'not able';
    else {
      const folder = await chosenFolder();
      const stored = (await list()).value?.find(({ id }) => id === open.now.id);
      if (stored !== undefined && this.lastMs !== null && stored.updatedMs <= this.lastMs)
        this.#written.set(openTrip, open.now);
      if (folder !== null) await this.#use(folder, 'query');
    }
    if (this.state !== 'on') remind(this.lastMs);
    $effect.root(() => {
      $effect(() => {
        if (open.keeping.state === 'kept') this.changed();
      });
    });
  }

  async choose(): Promise<void> {
    try {
      const folder = await folderPicker()?.();
      if (folder === undefined) return;
      await chooseFolder(folder);
      this.#written.clear();
      keep(ARCHIVE_SAVED, '');
      await this.#use(folder, 'request');
    } catch (error) {
      if (!(error instanceof DOMException && error.name === 'AbortError')) this.fault = String(error);
    }
  }

  /** Asks for the folder's permission again; browsers want a press of a button for it. */
  async goOn(): Promise<void> {
    if (this.#folder !== null) await this.#use(this.#folder, 'request');
  }

  async stop(): Promise<void> {
    clearTimeout(this.#timer);
    this.#folder = null;
    this.state = 'off';
    await chooseFolder(null).catch(() => undefined);
  }

  /** Something was stored: it is written when the time has come. */
  changed(): void {
    if (this.state !== 'on' || this.#timer !== undefined) return;
    const due = Math.max(0, (this.lastMs ?? 0) + EVERY_MS - Date.now());
    this.#timer = setTimeout(() => void this.now(), due);
  }

  /** Writes all that changed, one after another. */
  now(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  /** Whether a trip lies in the folder as it is. */
  holds(trip: Trip): boolean {
    return this.#written.get(openTrip) === trip;
  }

  /** The way for browsers without folders: a file that is downloaded. */
  saveByHand(): void {
    saveTripFile(open.now);
    this.#done();
  }

  async #use(folder: Folder, how: 'query' | 'request'): Promise<void> {
    this.#folder = folder;
    this.folderName = folder.name;
    const asking = how === 'query' ? folder.queryPermission : folder.requestPermission;
    const answer = (await asking?.call(folder, { mode: 'readwrite' })) ?? 'granted';
    this.state = answer === 'granted' ? 'on' : 'asks';
    this.fault = '';
    if (answer === 'granted') await this.now();
    else if (how === 'request') this.fault = say.storage.denied;
  }

  async #write(): Promise<void> {
    for (const source of this.#sources) {
      if (this.#folder === null) return;
      const fault = await this.#writeOne(this.#folder, source);
      if (fault === null) continue;
      this.fault = say.storage.failed(this.folderName, fault);
      const permitted = await this.#folder.queryPermission?.({ mode: 'readwrite' });
      if (permitted !== undefined && permitted !== 'granted') this.state = 'asks';
      return;
    }
    this.fault = '';
  }

  /** Writes what a source has, where that is not written yet; null, or why it could not. */
  async #writeOne(folder: Folder, source: Source): Promise<string | null> {
    try {
      const backed = await source();
      if (backed === null || this.#written.get(source) === backed.version) return null;
      const { problems } = await backUp(folder, await backed.make(), Date.now());
      if (problems.length > 0) return problems[0].what;
      this.#written.set(source, backed.version);
      if (typeof backed.version === 'string') keep(ARCHIVE_SAVED, backed.version);
      this.#done();
      return null;
    } catch (error) {
      return folderFault(error);
    }
  }

  /** The backups in the folder, the newest first; none where it cannot be read, which is then said. */
  async there(): Promise<readonly BackupFile[]> {
    try {
      return this.#folder === null ? [] : await backupsIn(this.#folder);
    } catch (error) {
      this.fault = say.storage.notReadable(this.folderName, folderFault(error));
      return [];
    }
  }

  /** One of them, to be read like any file; null where it is no longer there, which is then said. */
  async fileOf({ name }: BackupFile): Promise<File | null> {
    try {
      return (await (await this.#folder?.getFileHandle(name))?.getFile()) ?? null;
    } catch (error) {
      this.fault = say.storage.notReadable(name, folderFault(error));
      return null;
    }
  }

  #done(): void {
    this.lastMs = Date.now();
    keep(SAVED, String(this.lastMs));
  }
}

function openTrip(): Backed | null {
  const trip = open.now;
  const empty = trip.track === null && trip.obstacles.length === 0 && trip.vehicles.length === 0;
  if (trip.id === DEMO_ID || empty) return null;
  const make = () => ({ key: trip.id, name: trip.name, ending: 'json', content: tripToJson(trip) });
  return { version: trip, make };
}

function savedAt(): number | null {
  const saved = Number(kept(SAVED) ?? NaN);
  return Number.isFinite(saved) ? saved : null;
}

function kept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function keep(key: string, text: string): void {
  try {
    localStorage.setItem(key, text);
  } catch {
    return;
  }
}

/** Says once a page that a week has gone by, where nothing writes backups by itself. */
function remind(lastMs: number | null): void {
  const due = openTrip() !== null && Date.now() - (lastMs ?? 0) > WEEK_MS;
  if (!due) return;
  const action = { name: say.storage.saveNow, run: () => backups.saveByHand() };
  notices.say(say.storage.due(open.now.name), action);
}

export const backups = new Backups();
