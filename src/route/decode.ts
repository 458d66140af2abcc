import { Gunzip } from 'fflate';
import type { FaultList } from './faults.ts';
import { FAULTS, Stop } from './faults.ts';
import type { ReadLimits } from './limits.ts';
import { say } from '../words/words.ts';

/** Bytes needed to tell the encoding: a byte order mark, or an XML declaration of usual length. */
const HEAD_BYTES = 512;

/** Packed bytes that are unpacked at a time. Deflate expands at most 1,032 times, so this yields 4 MiB at most. */
const GZIP_STEP_BYTES = 4096;

const EMPTY = new Uint8Array(0);

/**
 * Turns the bytes of a GPX file into text, piece by piece: unpacks gzip, then decodes by byte order mark,
 * else by the bytes of the first character, else by the XML declaration, else as UTF-8
 * (XML 1.0, 5th ed., 2008, appendix F).
 */
export class Decoder {
  readonly #limits: ReadLimits;
  readonly #faults: FaultList;
  readonly #onText: (text: string) => void;
  #first = EMPTY;
  #started = false;
  #gunzip: Gunzip | null = null;
  #unpacked: Uint8Array[] = [];
  #packedBytes = 0;
  #decodedBytes = 0;
  #head = EMPTY;
  #decoder: TextDecoder | null = null;

  constructor(limits: ReadLimits, faults: FaultList, onText: (text: string) => void) {
    this.#limits = limits;
    this.#faults = faults;
    this.#onText = onText;
  }

  push(bytes: Uint8Array): void {
    if (this.#started) {
      this.#unpack(bytes, false);
      return;
    }
    this.#first = joined(this.#first, bytes);
    if (this.#first.length >= 4) this.#start(false);
  }

  end(): void {
    if (!this.#started) {
      if (this.#first.length === 0) throw new Stop(FAULTS.empty);
      this.#start(true);
    } else {
      this.#unpack(EMPTY, true);
    }
    if (!this.#decoder) this.#choose();
    this.#onText(this.#decoder!.decode());
  }

  #start(final: boolean): void {
    this.#started = true;
    const [a, b, c] = this.#first;
    if (a === 0x50 && b === 0x4b) throw new Stop(FAULTS.archive, say.gpx.zipArchive);
    if (a === 0x42 && b === 0x5a && c === 0x68) throw new Stop(FAULTS.archive, say.gpx.bzip2Archive);
    if (a === 0x1f && b === 0x8b) this.#gunzip = new Gunzip((data) => void this.#unpacked.push(data));
    this.#unpack(this.#first, final);
    this.#first = EMPTY;
  }

  #unpack(bytes: Uint8Array, final: boolean): void {
    const gunzip = this.#gunzip;
    if (!gunzip) {
      this.#decode(bytes);
      return;
    }
    let at = 0;
    do {
      const step = bytes.subarray(at, at + GZIP_STEP_BYTES);
      at += step.length;
      this.#packedBytes += step.length;
      let damage = '';
      try {
        gunzip.push(step, final && at >= bytes.length);
      } catch (error) {
        damage = error instanceof Error ? error.message : String(error);
      }
      const unpacked = this.#unpacked;
      this.#unpacked = [];
      for (const data of unpacked) this.#decode(data);
      if (damage) throw new Stop(FAULTS.badGzip, damage);
    } while (at < bytes.length);
  }

  #decode(bytes: Uint8Array): void {
    const { decodedBytes, gzipRatio, gzipGraceBytes } = this.#limits;
    this.#decodedBytes += bytes.length;
    if (this.#decodedBytes > decodedBytes) throw new Stop(FAULTS.tooBig, Math.round(decodedBytes / 1e6));
    if (this.#gunzip && this.#decodedBytes > Math.max(gzipGraceBytes, gzipRatio * this.#packedBytes)) {
      throw new Stop(FAULTS.gzipBomb, gzipRatio);
    }
    if (this.#decoder) {
      this.#onText(textOf(bytes, this.#decoder));
      return;
    }
    this.#head = joined(this.#head, bytes);
    if (this.#head.length >= HEAD_BYTES) this.#choose();
  }

  #choose(): void {
    this.#decoder = new TextDecoder(encodingOf(this.#head, this.#faults), { ignoreBOM: true });
    this.#onText(textOf(this.#head, this.#decoder).replace(/^\uFEFF/, ''));
    this.#head = EMPTY;
  }
}

/**
 * The text of the next bytes; half a character at their end waits for the rest. In UTF-8 a byte below 80 hex
 * is a character whole, after which nothing waits: Node decodes that three times as fast as a stream.
 */
function textOf(bytes: Uint8Array, decoder: TextDecoder): string {
  const whole = decoder.encoding === 'utf-8' && bytes[bytes.length - 1] < 0x80;
  return decoder.decode(bytes, { stream: !whole });
}

/** A label that TextDecoder knows, from the first bytes of a file. */
function encodingOf(head: Uint8Array, faults: FaultList): string {
  const [a, b, c, d] = head;
  if (a === 0xef && b === 0xbb && c === 0xbf) return 'utf-8';
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  if (a === 0x3c && b === 0 && c !== 0 && d === 0) return 'utf-16le';
  if (a === 0 && b === 0x3c && c === 0 && d !== 0) return 'utf-16be';
  const start = String.fromCharCode(...head.subarray(0, HEAD_BYTES));
  const label = /<\?xml\s[^>]*?encoding\s*=\s*["']\s*([^"'\s]+)/.exec(start)?.[1];
  if (label === undefined) return 'utf-8';
  try {
    const encoding = new TextDecoder(label).encoding;
    if (!encoding.startsWith('utf-16')) return encoding;
    faults.add(FAULTS.encodingWrong, 1, '', label);
  } catch {
    faults.add(FAULTS.encodingUnknown, 1, '', label);
  }
  return 'utf-8';
}

function joined(a: Uint8Array<ArrayBuffer>, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
