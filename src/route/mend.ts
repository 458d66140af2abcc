import type { FaultList } from './faults.ts';
import { FAULTS } from './faults.ts';

/**
 * Stands for a bare `&` while the text goes through the parser, which would otherwise swallow all up to the
 * next `;`. A character of private use (plane 15), so that it survives in CDATA and comments, where `&amp;`
 * would mean itself.
 */
export const BARE_AMPERSAND = '\u{F0026}';

/** An `&` that begins no reference. References longer than 32 letters are none. */
const BARE = /&(?!(?:#\d{1,7}|#x[\da-f]{1,6}|[a-z_][\w.-]{0,31});)/gi;
const REFERENCE_LENGTH = 34;

/** Mends, piece by piece, what makes the XML parser lose its way. */
export class Mender {
  readonly #faults: FaultList;
  #held = '';

  constructor(faults: FaultList) {
    this.#faults = faults;
  }

  /** `line` is that of the first character. What could be half a reference is held back for the next piece. */
  mended(text: string, line: number, last: boolean): string {
    let piece = this.#held + text;
    this.#held = '';
    if (!last) {
      const from = piece.indexOf('&', Math.max(0, piece.length - REFERENCE_LENGTH));
      if (from >= 0) {
        this.#held = piece.slice(from);
        piece = piece.slice(0, from);
      }
    }
    const nul = piece.indexOf('\0');
    if (nul >= 0) {
      this.#faults.add(FAULTS.nul, line + piece.slice(0, nul).split('\n').length - 1);
      piece = piece.replaceAll('\0', '');
    }
    return piece.includes('&') ? piece.replace(BARE, BARE_AMPERSAND) : piece;
  }
}
