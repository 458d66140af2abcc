/** Why a published archive, or a part of it, cannot be read; `say.published.trouble` says it. */
export const TROUBLES = [
  /** The device has no network. */
  'noNetwork',
  'unreachable',
  /** The host lets no other page read what it has. */
  'noCors',
  /** A page that came by https may not ask by http. */
  'onlyHttps',
  'nothingThere',
  'refused',
  'busy',
  /** The host sends whoever asks to another address. */
  'moved',
  'wholeFiles',
  'noArchive',
  'newer',
  'brokenIndex',
  'brokenRecord',
  /** Another archive stands there than when it was opened. */
  'changed',
] as const;

export type TroubleWord = (typeof TROUBLES)[number];

/** What passes through the library that reads tiles, and comes out as it went in. */
export class Trouble extends Error {
  constructor(readonly word: TroubleWord) {
    super(word);
    this.name = 'Trouble';
  }
}
