/** A file of the program that is kept on the device. */
export interface KeptFile {
  /** From the folder of the service worker; the page itself is `./`. */
  readonly path: string;
  /** What the file holds, as in the integrity attribute of HTML: `sha256-…`, two of them where either will do. */
  readonly integrity: string;
}

/** One build of the program: a name of its own, and all its files. */
export interface Kept {
  readonly version: string;
  readonly files: readonly KeptFile[];
}

/** What a page asks of the service worker: to make sure that all is kept, or to take over from the one before. */
export type Ask = 'make sure' | 'take over';

/** What the service worker answers or says by itself. `noRoom`: the device's storage is full. */
export type Said = { readonly kept: true } | { readonly kept: false; readonly noRoom: boolean };

/** The address under which a request finds its file: the page by either of its names, without query and place. */
export function keptAddress(url: string, folder: string): string | null {
  const { origin, pathname } = new URL(url);
  const address = origin + pathname;
  if (!address.startsWith(folder)) return null;
  return address === `${folder}index.html` ? folder : address;
}
