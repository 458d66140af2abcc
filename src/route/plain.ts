import type { XmlListener } from './xml.ts';

const NEWLINE = 10;
const NONE = {};

/** Longest text that is kept back because it may be the beginning of a plain point. */
export const PLAIN_LENGTH = 1024;

/**
 * Reads points that are written as nearly all files write them, and tells of them as the parser would:
 *
 *     <trkpt lat="…" lon="…"><ele>…</ele><time>…</time></trkpt>
 *
 * with `lon` first or last, elevation and time or not, and white space between the tags. It stops at the first
 * character of anything else, which the parser then reads.
 */
export class PlainPoints {
  /** Lines that ended in what was read here. */
  lines = 0;
  readonly #listener: XmlListener;
  #text = '';
  #at = 0;

  constructor(listener: XmlListener) {
    this.#listener = listener;
  }

  /** Reads points from the start of `text`; answers where it stopped. */
  read(text: string): number {
    this.#text = text;
    this.#at = 0;
    let end = 0;
    while (this.#point()) end = this.#at;
    this.#text = '';
    return end;
  }

  /** One whole point, looked through before any of it is told. */
  #point(): boolean {
    const before = this.#space();
    if (!this.#take('<trkpt ')) return false;
    const first = this.#take('lat="') ? 'lat' : this.#take('lon="') ? 'lon' : '';
    if (first === '') return false;
    const a = this.#until('"');
    if (a === null || !this.#take(first === 'lat' ? ' lon="' : ' lat="')) return false;
    const b = this.#until('"');
    if (b === null || !this.#take('>')) return false;
    const beforeEle = this.#space();
    const ele = this.#take('<ele>') ? this.#until('<') : undefined;
    if (ele === null || (ele !== undefined && !this.#take('/ele>'))) return false;
    const beforeTime = this.#space();
    const time = this.#take('<time>') ? this.#until('<') : undefined;
    if (time === null || (time !== undefined && !this.#take('/time>'))) return false;
    const beforeEnd = this.#space();
    if (!this.#take('</trkpt>')) return false;

    this.lines += before;
    this.#listener.open('trkpt', first === 'lat' ? { lat: a, lon: b } : { lat: b, lon: a });
    this.lines += beforeEle;
    if (ele !== undefined) this.#tell('ele', ele);
    this.lines += beforeTime;
    if (time !== undefined) this.#tell('time', time);
    this.lines += beforeEnd;
    this.#listener.close();
    return true;
  }

  #tell(name: string, value: string): void {
    this.#listener.open(name, NONE);
    if (value !== '') this.#listener.text(value);
    this.#listener.close();
  }

  /** Passes over white space, and answers how many lines end in it. Elsewhere in a plain point none does. */
  #space(): number {
    for (let lines = 0; ; this.#at++) {
      const code = this.#text.charCodeAt(this.#at);
      if (code === NEWLINE) lines++;
      else if (code !== 32 && code !== 13 && code !== 9) return lines;
    }
  }

  #take(word: string): boolean {
    if (!this.#text.startsWith(word, this.#at)) return false;
    this.#at += word.length;
    return true;
  }

  /** Plain text up to a mark, which is passed over too; null where it ends first or is not plain. */
  #until(mark: '"' | '<'): string | null {
    const end = this.#text.indexOf(mark, this.#at);
    if (end < 0) return null;
    const value = this.#text.slice(this.#at, end);
    for (let i = 0; i < value.length; i++) {
      const code = value.charCodeAt(i);
      // Digits, letters, blanks and what dates and numbers are written with; nothing that XML reads in its own way.
      if (code < 32 || code > 122 || code === 38 || code === 60 || code === 62 || code === 93) return null;
    }
    this.#at = end + 1;
    return value;
  }
}
