/** The bytes of something that the browser keeps, at once; only its workers can ask so. */
export type ReadBlob = (blob: Blob) => ArrayBuffer;

/** Bytes that are fetched and put away together. */
export const BLOCK = 2 ** 18;

/** Blocks that stay in memory, 5 MB, where the browser can keep the others. */
const HOT = 20;

interface Hot {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Whether it is not put away as it is now. */
  changed: boolean;
}

/**
 * A file that is read and written anywhere, of which only what was used last is in memory: the rest is given to the browser
 * as blobs, which keeps large ones on the disk. So it needs no file system, and leaves nothing behind where it is stopped.
 */
export class BlockFile {
  /** Blocks that had to be fetched so far. */
  fetches = 0;
  #size = 0;
  readonly #readBlob: ReadBlob | null;
  readonly #most: number;
  readonly #cold: (Blob | undefined)[] = [];
  /** By their number, the one used last at the end. */
  readonly #hot = new Map<number, Hot>();
  /** Of the block that was put away last, to be filled anew: the browser takes its time to give memory back. */
  #spare: Uint8Array<ArrayBuffer> | null = null;

  /**
   * Empty.
   * @param readBlob null where nothing can be fetched again at once: all of it then stays in memory
   * @param most blocks that stay there otherwise
   */
  constructor(readBlob: ReadBlob | null = null, most = HOT) {
    this.#readBlob = readBlob;
    this.#most = most;
  }

  static ofBlob(whole: Blob, readBlob: ReadBlob, most = HOT): BlockFile {
    const file = new BlockFile(readBlob, most);
    file.#size = whole.size;
    for (let at = 0; at < whole.size; at += BLOCK) file.#cold.push(whole.slice(at, at + BLOCK));
    return file;
  }

  static ofBytes(bytes: Uint8Array): BlockFile {
    const file = new BlockFile();
    file.write(0, bytes);
    return file;
  }

  get size(): number {
    return this.#size;
  }

  /** Fills `into` from `at` on, behind the end with zeros; how many bytes there were. */
  read(at: number, into: Uint8Array): number {
    const count = Math.max(0, Math.min(into.length, this.#size - at));
    for (let done = 0; done < count;) {
      const block = this.#block(Math.floor((at + done) / BLOCK)).bytes;
      const from = (at + done) % BLOCK;
      const some = Math.min(count - done, BLOCK - from);
      into.set(block.subarray(from, from + some), done);
      done += some;
    }
    into.fill(0, count);
    return count;
  }

  write(at: number, bytes: Uint8Array): void {
    for (let done = 0; done < bytes.length;) {
      const block = this.#block(Math.floor((at + done) / BLOCK));
      const from = (at + done) % BLOCK;
      const some = Math.min(bytes.length - done, BLOCK - from);
      block.bytes.set(bytes.subarray(done, done + some), from);
      block.changed = true;
      done += some;
    }
    this.#size = Math.max(this.#size, at + bytes.length);
  }

  truncate(size: number): void {
    if (size >= this.#size) return;
    const count = Math.ceil(size / BLOCK);
    this.#cold.length = Math.min(this.#cold.length, count);
    for (const number of [...this.#hot.keys()]) if (number >= count) this.#hot.delete(number);
    if (size % BLOCK > 0) {
      const last = this.#block(count - 1);
      last.bytes.fill(0, size % BLOCK);
      last.changed = true;
    }
    this.#size = size;
  }

  /** All of it; what is put away already is not fetched for it. */
  blob(type = ''): Blob {
    const parts = Array.from({ length: Math.ceil(this.#size / BLOCK) }, (_, number): BlobPart => {
      const length = Math.min(BLOCK, this.#size - number * BLOCK);
      const hot = this.#hot.get(number);
      const cold = this.#cold[number];
      if (hot && (hot.changed || cold === undefined)) return hot.bytes.subarray(0, length);
      return cold?.slice(0, length) ?? new Uint8Array(length);
    });
    return new Blob(parts, { type });
  }

  bytes(): Uint8Array<ArrayBuffer> {
    const whole = new Uint8Array(this.#size);
    this.read(0, whole);
    return whole;
  }

  #block(number: number): Hot {
    const hot = this.#hot.get(number) ?? this.#fetched(number);
    this.#hot.delete(number);
    this.#hot.set(number, hot);
    if (this.#readBlob !== null && this.#hot.size > this.#most) this.#putAway();
    return hot;
  }

  #fetched(number: number): Hot {
    const bytes = this.#empty();
    const cold = this.#cold[number];
    if (cold === undefined || this.#readBlob === null) return { bytes, changed: false };
    this.fetches++;
    const read = this.#readBlob(cold);
    bytes.set(new Uint8Array(read));
    letGo(read);
    return { bytes, changed: false };
  }

  #empty(): Uint8Array<ArrayBuffer> {
    const bytes = this.#spare?.fill(0) ?? new Uint8Array(BLOCK);
    this.#spare = null;
    return bytes;
  }

  /** The one that was not used for longest. */
  #putAway(): void {
    const [number, { bytes, changed }] = this.#hot.entries().next().value!;
    if (changed) this.#cold[number] = new Blob([bytes]);
    this.#hot.delete(number);
    if (this.#spare === null) this.#spare = bytes;
    else letGo(bytes.buffer);
  }
}

/** A port whose other end is closed: what is sent there is thrown away at once. */
const nowhere = portToNowhere();

function portToNowhere(): MessagePort {
  const { port1, port2 } = new MessageChannel();
  port2.close();
  return port1;
}

/**
 * Gives memory back now: what nothing points at any more may lie about for hundreds of megabytes. What a browser has read it
 * holds on to itself, too, until it is sent away.
 */
function letGo(buffer: ArrayBuffer): void {
  nowhere.postMessage(null, [buffer]);
}
