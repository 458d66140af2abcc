import { unzlibSync } from 'fflate';
import { BaseDecoder } from 'geotiff';

/** How blocks may be packed (TIFF 6.0 and its supplements): not at all, LZW, deflate by either number, PackBits. */
export const PACKINGS: readonly number[] = [1, 5, 8, 32946, 32773];

/** Unpacks one block, to its stated size and never beyond: a library would unpack whatever is packed. */
export class BlockDecoder extends BaseDecoder {
  readonly #packing: number;
  readonly #size: number;

  /** @param size bytes of an unpacked block */
  constructor(packing: number, size: number, parameters: BaseDecoder['parameters']) {
    super(parameters);
    this.#packing = packing;
    this.#size = size;
  }

  override decodeBlock(packed: ArrayBuffer): ArrayBuffer {
    const bytes = new Uint8Array(packed);
    const whole = new Uint8Array(this.#size);
    switch (this.#packing) {
      case 1:
        whole.set(bytes.subarray(0, this.#size));
        break;
      case 5:
        unpackLzw(bytes, whole);
        break;
      case 32773:
        unpackBits(bytes, whole);
        break;
      default:
        unzlibSync(bytes, { out: whole });
    }
    return whole.buffer;
  }
}

/** PackBits (TIFF 6.0, section 9). */
function unpackBits(packed: Uint8Array, into: Uint8Array): void {
  for (let at = 0, to = 0; at < packed.length && to < into.length;) {
    const n = (packed[at++] << 24) >> 24;
    if (n >= 0) {
      into.set(packed.subarray(at, Math.min(at + n + 1, at + into.length - to)), to);
      at += n + 1;
      to += n + 1;
    } else if (n !== -128) {
      into.fill(packed[at++], to, to + 1 - n);
      to += 1 - n;
    }
  }
}

const CLEAR = 256;
const END = 257;

/** LZW as TIFF has it (TIFF 6.0, section 13): codes of 9 to 12 bits, high bit first, one code before the table is full. */
function unpackLzw(packed: Uint8Array, into: Uint8Array): void {
  /** Of each code: where in `into` its string stands, and how long it is. */
  const from = new Int32Array(4097);
  const length = new Int32Array(4097);
  let [codes, bits] = [END + 1, 9];
  let [held, heldBits] = [0, 0];
  let previous = -1;
  for (let at = 0, to = 0; to < into.length;) {
    while (heldBits < bits) {
      if (at >= packed.length) return;
      held = ((held << 8) | packed[at++]) & 0xffffff;
      heldBits += 8;
    }
    heldBits -= bits;
    const code = (held >> heldBits) & ((1 << bits) - 1);
    if (code === END) return;
    if (code === CLEAR) {
      [codes, bits, previous] = [END + 1, 9, -1];
      continue;
    }
    if (code > codes || (code === codes && previous < 0)) throw new RangeError('LZW code out of order');
    const start = to;
    if (code < CLEAR) into[to++] = code;
    else {
      const size = code < codes ? length[code] : to - previous + 1;
      const source = code < codes ? from[code] : previous;
      for (let i = 0; i < size && to < into.length; i++, to++) into[to] = into[source + i];
    }
    if (previous >= 0 && codes < 4096) {
      from[codes] = previous;
      length[codes] = start - previous + 1;
      codes++;
      if (codes + 1 >= 1 << bits && bits < 12) bits++;
    }
    previous = start;
  }
}
