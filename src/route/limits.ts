/**
 * What a GPX file may hold at most. Beyond any of these, reading stops, keeps what came before and says so
 * (a name or description that is too long is cut instead).
 */
export interface ReadLimits {
  /** Bytes after unpacking. 1 GiB is some 5 million points with all their extensions. */
  readonly decodedBytes: number;
  /** How far gzip may expand. GPX shrinks 8 to 50 times; a file made to exhaust memory, about 1,000 times. */
  readonly gzipRatio: number;
  /** Unpacked bytes that are let through before `gzipRatio` is asked: a short, very regular file is no bomb. */
  readonly gzipGraceBytes: number;
  /** Points of all kinds together. 5 million are 58 days at one a second, and 200 MB of arrays. */
  readonly points: number;
  /** Tracks and routes together. Each costs about 2 kB beside its points. */
  readonly tracks: number;
  /** Elements inside one another. GPX needs six; the extensions seen in real files never twelve. */
  readonly depth: number;
  /** UTF-16 units in one value, tag or comment: room for a photo embedded in an extension, and no more. */
  readonly valueLength: number;
  /** UTF-16 units kept of a name or a description; the rest is cut off. */
  readonly textLength: number;
  /** Violations of XML. A file this broken is something else with a wrong name. */
  readonly xmlErrors: number;
  /** Lowest and highest elevation on land: Dead Sea shore -430 m, Everest 8,849 m (from memory), with room. */
  readonly lowestM: number;
  readonly highestM: number;
}

export const READ_LIMITS: ReadLimits = {
  decodedBytes: 2 ** 30,
  gzipRatio: 200,
  gzipGraceBytes: 2 ** 24,
  points: 5_000_000,
  tracks: 10_000,
  depth: 100,
  valueLength: 2 ** 23,
  textLength: 100_000,
  xmlErrors: 10_000,
  lowestM: -500,
  highestM: 9_000,
};
