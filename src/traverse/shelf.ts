/** Bytes of a block: some tens of arrays. */
const BLOCK_BYTES = 1 << 17;

/** Blocks that nobody looks into, to be used anew; no more than 16 MB of them. */
const spare: ArrayBuffer[] = [];
const MOST_SPARE = 128;

/**
 * Arrays that belong together, side by side in few buffers. To make a buffer for each, and to have it cleared away, takes a
 * browser longer than to work out what stands in it.
 */
export class Shelf {
  #block: ArrayBuffer;
  #used = 0;
  #blocks: ArrayBuffer[] = [];

  /** With room for so many bytes; what goes beyond them goes into whole blocks. */
  constructor(bytes = 0) {
    this.#block = new ArrayBuffer(bytes);
  }

  /** So many zeros. */
  numbers(count: number): Float64Array<ArrayBuffer> {
    const from = this.#take(8 * count);
    return new Float64Array(this.#block, from, count);
  }

  /** So many zeros of a byte each. */
  bytes(count: number): Uint8Array<ArrayBuffer> {
    const from = this.#take(count);
    return new Uint8Array(this.#block, from, count);
  }

  /** So many zeros of four bytes each. */
  counts(count: number): Uint32Array<ArrayBuffer> {
    const from = this.#take(4 * count);
    return new Uint32Array(this.#block, from, count);
  }

  /** Lets go of all arrays: nobody may look into one any more, as others will be laid in their place. */
  clear(): void {
    for (const block of this.#blocks) if (spare.length < MOST_SPARE) spare.push(block);
    this.#blocks = [];
    this.#block = new ArrayBuffer(0);
    this.#used = 0;
  }

  #take(bytes: number): number {
    if (this.#used + bytes > this.#block.byteLength) {
      this.#block = bytes > BLOCK_BYTES ? new ArrayBuffer(bytes) : this.#whole();
      this.#used = 0;
    }
    const from = this.#used;
    this.#used += 8 * Math.ceil(bytes / 8);
    return from;
  }

  #whole(): ArrayBuffer {
    const used = spare.pop();
    if (used !== undefined) new Float64Array(used).fill(0);
    const block = used ?? new ArrayBuffer(BLOCK_BYTES);
    this.#blocks.push(block);
    return block;
  }
}
