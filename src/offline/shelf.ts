import type { Kept, KeptFile } from './kept.ts';

/** The files of one build in the browser's cache. All of them are there or none counts. */
export class Shelf {
  readonly #folder: string;
  readonly #kept: Kept;

  /** @param folder address of the program, ending in a slash; two copies on one host keep apart by it */
  constructor(folder: string, kept: Kept) {
    this.#folder = folder;
    this.#kept = kept;
  }

  get #name(): string {
    return `rutline ${this.#folder} ${this.#kept.version}`;
  }

  /** Fetches and keeps every file, or throws and keeps none. What is already here by content is not fetched again. */
  async fill(): Promise<void> {
    const cache = await caches.open(this.#name);
    const puts = await Promise.allSettled(
      this.#kept.files.map(async (file) => cache.put(this.#address(file), await this.#get(file))),
    );
    const failed = puts.find((put) => put.status === 'rejected');
    if (failed === undefined) return;
    await caches.delete(this.#name);
    throw failed.reason;
  }

  async isFull(): Promise<boolean> {
    const cache = await caches.open(this.#name);
    const there = new Set((await cache.keys()).map(({ url }) => url));
    return this.#kept.files.every((file) => there.has(this.#address(file)));
  }

  /** The file at an address, of this build or else of one whose page is still open. */
  async at(address: string): Promise<Response | undefined> {
    const own = await caches.open(this.#name);
    return (await own.match(address, ANY)) ?? (await caches.match(address, ANY));
  }

  /** Clears away the files of every other build of this copy of the program. */
  async clearOthers(): Promise<void> {
    const names = await caches.keys();
    const others = names.filter((name) => name.startsWith(`rutline ${this.#folder} `) && name !== this.#name);
    await Promise.all(others.map((name) => caches.delete(name)));
  }

  #address({ path }: KeptFile): string {
    return new URL(path, this.#folder).href;
  }

  async #get(file: KeptFile): Promise<Response> {
    const address = this.#address(file);
    const here = await caches.match(address, ANY);
    if (here !== undefined && file.integrity.split(' ').includes(await integrityOf(here.clone())))
      return here;
    const got = await fetch(address, { integrity: file.integrity, cache: 'no-cache' });
    if (!got.ok) throw new Error(`${address}: ${got.status}`);
    return got;
  }
}

/** A server may say that an answer varies; the files of a build do not. */
const ANY: CacheQueryOptions = { ignoreVary: true };

async function integrityOf(response: Response): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}
