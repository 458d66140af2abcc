import type { Reading } from '../problem.ts';

/** What is backed up as a file: a trip, or all that the club keeps. */
export interface Backup {
  /** Tells the backups of one thing from those of others, whatever either is called. */
  readonly key: string;
  /** What a person knows it by; becomes the beginning of the file's name. */
  readonly name: string;
  /** Of the file's name, without a dot. */
  readonly ending: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
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
  const name = backupName(backup, nowMs);
  const unfinished = `${name}.part`;
  try {
    const part: Movable = await write(folder, unfinished, backup.content);
    if (part.move === undefined) {
      await write(folder, name, backup.content);
      await folder.removeEntry(unfinished);
    } else await part.move(name);
    await prune(folder, backup.key, nowMs);
    return { value: name, problems: [] };
  } catch (error) {
    await folder.removeEntry(unfinished).catch(() => undefined);
    const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    return { value: null, problems: [{ severity: 'error', where: folder.name, what, done: '', times: 1 }] };
  }
}

/** Such as `Ember Range [a1b2c3d4] 2026-11-25 17.05.09Z.json`: names that every system takes, in the order of time. */
export function backupName({ key, name, ending }: Omit<Backup, 'content'>, nowMs: number): string {
  const moment = new Date(nowMs).toISOString().slice(0, 19).replace('T', ' ').replaceAll(':', '.');
  const plain = name.replace(/[^\p{L}\p{N} _-]+/gu, ' ').replace(/\s+/g, ' ').trim().slice(0, 60); // prettier-ignore
  return `${plain || 'Rutline'} [${keyText(key)}] ${moment}Z.${ending}`;
}

/** Which of the moments of earlier backups are no longer to be kept; the newest always is. */
export function overdue(momentsMs: readonly number[], nowMs: number): number[] {
  const newestFirst = [...momentsMs].sort((a, b) => b - a);
  const days = new Set<number>();
  return newestFirst.filter((ms, i) => {
    const day = Math.floor(ms / DAY_MS);
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
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  await stream.write(bytes);
  await stream.close();
  const { size } = await file.getFile();
  if (size !== bytes.length) throw new Error(`${size} of ${bytes.length} bytes were written`);
  return file;
}

/** Half files of a browser that died are taken away with the rest; nothing else in the folder is touched. */
async function prune(folder: FileSystemDirectoryHandle, key: string, nowMs: number): Promise<void> {
  const moments = new Map<number, string>();
  const gone: string[] = [];
  const mark = ` [${keyText(key)}] `;
  for await (const name of folder.keys()) {
    const found = /(\d{4}-\d\d-\d\d) (\d\d)\.(\d\d)\.(\d\d)Z\.\w+(\.part)?$/.exec(name);
    if (found === null || !name.includes(mark)) continue;
    const [, day, hours, minutes, seconds, part] = found;
    if (part) gone.push(name);
    else moments.set(Date.parse(`${day}T${hours}:${minutes}:${seconds}Z`), name);
  }
  gone.push(...overdue([...moments.keys()], nowMs).flatMap((ms) => moments.get(ms) ?? []));
  for (const name of gone) await folder.removeEntry(name);
}

function keyText(key: string): string {
  return key.replace(/[^A-Za-z0-9]/g, '').slice(0, 12) || 'trip';
}
