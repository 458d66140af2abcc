/** The folder that someone chose for backups, kept in a store of its own: only a store can keep a folder. */
const NAME = 'rutline-backups';
const SHELF = 'folders';
const KEY = 'chosen';

/** A folder that can be asked for what it permits (WICG, File System Access). */
export interface Folder extends FileSystemDirectoryHandle {
  queryPermission?: (for_: { mode: 'readwrite' }) => Promise<PermissionState>;
  requestPermission?: (for_: { mode: 'readwrite' }) => Promise<PermissionState>;
}

/** The way in which a person chooses a folder; undefined where the browser has none. */
export function folderPicker(mode: 'read' | 'readwrite' = 'readwrite'): (() => Promise<Folder>) | undefined {
  const { showDirectoryPicker } = globalThis as {
    showDirectoryPicker?: (options: object) => Promise<Folder>;
  };
  return showDirectoryPicker && (() => showDirectoryPicker({ id: 'rutline', mode }));
}

export function chosenFolder(): Promise<Folder | null> {
  return inStore('readonly', (shelf) => shelf.get(KEY) as IDBRequest<Folder | undefined>).then(
    (folder) => folder ?? null,
    () => null,
  );
}

/** Null forgets the folder. */
export async function chooseFolder(folder: Folder | null): Promise<void> {
  if (folder === null) await inStore('readwrite', (shelf) => shelf.delete(KEY));
  else await inStore('readwrite', (shelf) => shelf.put(folder, KEY));
}

function inStore<T>(mode: IDBTransactionMode, work: (shelf: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(NAME, 1);
    const fail = (request: IDBRequest) => () => reject(request.error ?? new Error('The store failed.'));
    opening.onupgradeneeded = () => opening.result.createObjectStore(SHELF);
    opening.onerror = fail(opening);
    opening.onsuccess = () => {
      const database = opening.result;
      const asked = work(database.transaction(SHELF, mode).objectStore(SHELF));
      asked.onerror = fail(asked);
      asked.onsuccess = () => {
        database.close();
        resolve(asked.result);
      };
    };
  });
}
