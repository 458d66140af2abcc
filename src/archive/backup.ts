import type { Reading } from '../problem.ts';
import { say } from '../words/words.ts';

/** What is backed up as a file: a trip, or all that the club keeps. */
export interface Backup {
  /** Tells the backups of one thing from those of others, whatever either is called. */
  readonly key: string;
  /** What a person knows it by; becomes the beginning of the file's name. */
  readonly name: string;
  /** Of the file's name, without a dot. */
  readonly ending: string;
  readonly content: string | Blob;
}

/** A backup as it lies in the folder. */
export interface BackupFile {
  readonly name: string;
  /** The name of what it is a backup of. */
  readonly of: string;
  readonly atMs: number;
}

/** How many backups of one thing are kept: the last ones, and then the last of each day for so many days. */
export const KEPT = { last: 10, days: 30 } as const;

const DAY_MS = 86_400_000;

/** The folder as a person granted it. Not every browser can give a file another name. */
type Movable = FileSystemFileHandle & { readonly move?: (name: string) => Promise<void> };

/**
 * Writes a backup into a folder: under a temporary name first, looked at again, then under its own, so that no half file
 * ever bears it; then takes away the older ones that are not to be kept. The name of the file, or why there is none;
 * what stood there before stays then. `nowMs` is the time of day.
 */
export async function backUp(
  folder: FileSystemDirectoryHandle,
  backup: Backup,
  nowMs: number,
): Promise<Reading<string>> {
  let unfinished = '';
  try {
    const name = await freeName(folder, backup, nowMs);
    unfinished = `${name}.part`;
    const part: Movable = await write(folder, unfinished, backup.content);
    if (part.move === undefined) {
      await write(folder, name, backup.content);
      await folder.removeEntry(unfinished);
    } else await part.move(name);
    await prune(folder, backup.key, nowMs);
    return { value: name, problems: [] };
  } catch (error) {
    if (unfinished !== '') await folder.removeEntry(unfinished).catch(() => undefined);
    const what = folderFault(error);
    return { value: null, problems: [{ severity: 'error', where: folder.name, what, done: '', times: 1 }] };
  }
}

/** What went wrong with a folder or a file in it, in words where a browser's own say nothing to a person. */
export function folderFault(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (error.name === 'NotFoundError') return say.storage.notThere;
  return `${error.name}: ${error.message}`;
}

/** Such as `Ember Range [a1b2c3d4] 2026-11-25 17.05.09.250Z.json`: names that every system takes, in the order of time. */
export function backupName({ key, name, ending }: Omit<Backup, 'content'>, nowMs: number): string {
  const moment = new Date(nowMs).toISOString().slice(0, 23).replace('T', ' ').replaceAll(':', '.');
  const plain = name.replace(/[^\p{L}\p{N} _-]+/gu, ' ').replace(/\s+/g, ' ').trim().slice(0, 60); // prettier-ignore
  return `${plain || 'Rutline'} [${keyText(key)}] ${moment}Z.${ending}`;
}

/** When a file was written that is a backup by its name, whole or not (`.part`); null for any other. */
function readName(
  name: string,
): { readonly of: string; readonly mark: string; readonly atMs: number; readonly part: boolean } | null {
  const found =
    /^(.*) (\[\w+\]) (\d{4}-\d\d-\d\d) (\d\d)\.(\d\d)\.(\d\d(?:\.\d{3})?)Z\.[\w-]+(\.part)?$/.exec(name);
  if (found === null) return null;
  const [, of, mark, day, hours, minutes, seconds, part] = found;
  return { of, mark, atMs: Date.parse(`${day}T${hours}:${minutes}:${seconds}Z`), part: part !== undefined };
}

/** Two windows may write in the same moment. */
async function freeName(folder: FileSystemDirectoryHandle, backup: Backup, nowMs: number): Promise<string> {
  const there = new Set<string>();
  for await (const name of folder.keys()) there.add(name.replace(/\.part$/, ''));
  let atMs = nowMs;
  while (there.has(backupName(backup, atMs))) atMs++;
  return backupName(backup, atMs);
}

/** The whole backups in a folder, of whatever, the newest first. */
export async function backupsIn(folder: FileSystemDirectoryHandle): Promise<BackupFile[]> {
  const files: BackupFile[] = [];
  for await (const name of folder.keys()) {
    const read = readName(name);
    if (read !== null && !read.part) files.push({ name, of: read.of, atMs: read.atMs });
  }
  return files.sort((a, b) => b.atMs - a.atMs);
}

/** Which of the backups of one thing are no longer to be kept; the newest always is. */
export function overdue<T extends { readonly atMs: number }>(files: readonly T[], nowMs: number): T[] {
  const newestFirst = [...files].sort((a, b) => b.atMs - a.atMs);
  const days = new Set<number>();
  return newestFirst.filter(({ atMs }, i) => {
    const day = Math.floor(atMs / DAY_MS);
    const firstOfDay = !days.has(day);
    days.add(day);
    return i >= KEPT.last && !(firstOfDay && day > Math.floor(nowMs / DAY_MS) - KEPT.days);
  });
}

async function write(
  folder: FileSystemDirectoryHandle,
  name: string,
  content: Backup['content'],
): Promise<FileSystemFileHandle> {
  const file = await folder.getFileHandle(name, { create: true });
  const stream = await file.createWritable();
  const whole = new Blob([content]);
  await stream.write(whole);
  await stream.close();
  const { size } = await file.getFile();
  if (size !== whole.size) throw new Error(`${size} of ${whole.size} bytes were written`);
  return file;
}

/** Half files of a browser that died are taken away with the rest; nothing else in the folder is touched. */
async function prune(folder: FileSystemDirectoryHandle, key: string, nowMs: number): Promise<void> {
  const whole: { name: string; atMs: number }[] = [];
  const gone: string[] = [];
  for await (const name of folder.keys()) {
    const read = readName(name);
    if (read?.mark !== `[${keyText(key)}]`) continue;
    if (read.part) gone.push(name);
    else whole.push({ name, atMs: read.atMs });
  }
  gone.push(...overdue(whole, nowMs).map(({ name }) => name));
  for (const name of gone) await folder.removeEntry(name).catch(unlessGone);
}

/** Another window may have taken it away already. */
function unlessGone(error: unknown): void {
  if (!(error instanceof Error && error.name === 'NotFoundError')) throw error;
}

/** The beginning of a key, and a number: ids of files may begin as others do (FNV-1a of 32 bits; Fowler, Noll, Vo). */
function keyText(key: string): string {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(key)) hash = Math.imul(hash ^ byte, 0x01000193);
  return key.replace(/[^A-Za-z0-9]/g, '').slice(0, 8) + (hash >>> 0).toString(16).padStart(8, '0');
}
