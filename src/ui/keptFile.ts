/** What a file is kept for; of each there is one at most. */
export type Use = 'background' | 'elevation';

interface Entry {
  readonly key: string;
  readonly name: string;
}

/** Bytes of either end that tell one file from another, together with its length. */
const END_BYTES = 2 ** 20;

/**
 * Copies a file into the origin-private file system, under a name made of what it holds; false where the browser has
 * none, or no room. What was kept for the same use before goes.
 */
export async function keepFile(use: Use, file: File): Promise<boolean> {
  try {
    const folder = await folderOf(use);
    const key = await keyOf(file);
    const handle = await folder.getFileHandle(key, { create: true });
    if ((await handle.getFile()).size !== file.size)
      await file.stream().pipeTo(await handle.createWritable());
    localStorage.setItem(slot(use), JSON.stringify({ key, name: file.name } satisfies Entry));
    await clear(folder, key);
    return true;
  } catch {
    await dropFile(use);
    return false;
  }
}

/** The file that is kept for a use, under its own name; null where there is none. */
export async function keptFile(use: Use): Promise<File | null> {
  try {
    const entry = JSON.parse(localStorage.getItem(slot(use)) ?? 'null') as Entry | null;
    if (entry === null) return null;
    const file = await (await (await folderOf(use)).getFileHandle(entry.key)).getFile();
    return new File([file], entry.name);
  } catch {
    return null;
  }
}

export async function dropFile(use: Use): Promise<void> {
  try {
    localStorage.removeItem(slot(use));
    await clear(await folderOf(use), null);
  } catch {
    return;
  }
}

function slot(use: Use): string {
  return `rutline.kept.${use}`;
}

async function folderOf(use: Use): Promise<FileSystemDirectoryHandle> {
  const root = await navigator.storage.getDirectory();
  return root.getDirectoryHandle(`kept-${use}`, { create: true });
}

async function clear(folder: FileSystemDirectoryHandle, but: string | null): Promise<void> {
  const names: string[] = [];
  for await (const name of folder.keys()) if (name !== but) names.push(name);
  for (const name of names) await folder.removeEntry(name);
}

async function keyOf(file: File): Promise<string> {
  const ends = new Blob([`${file.size} `, file.slice(0, END_BYTES), file.slice(-END_BYTES)]);
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', await ends.arrayBuffer()));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
