import type { Problem } from '../problem.ts';

/** One kind of thing that can be wrong with a GPX file. `{}` in `what` is replaced by a detail. */
export interface Fault extends Pick<Problem, 'severity' | 'what' | 'done'> {
  /** The file as a whole is turned away. */
  readonly refuses: boolean;
}

const refusal = (what: string, done: string): Fault => ({ severity: 'error', what, done, refuses: true });
const error = (what: string, done: string): Fault => ({ severity: 'error', what, done, refuses: false });
const warning = (what: string, done: string): Fault => ({ severity: 'warning', what, done, refuses: false });

const STOPPED = 'Reading stopped here; everything before it is kept.';

/** Every complaint of the GPX reader. */
export const FAULTS = {
  // The file as a whole
  empty: refusal('The file is empty.', 'Export it again.'),
  notXml: refusal('This is not GPX: no XML element was found in it.', 'Choose the .gpx file itself.'),
  archive: refusal('This is a {}, not GPX.', 'Unpack it first, then open the .gpx file inside.'),
  notGpx: refusal('This is not GPX: it begins with <{}>.', 'Export the recording as GPX.'),
  webPage: refusal('This is a web page, not GPX.', 'Download the file itself; a sign-in may be needed.'),
  doctype: refusal(
    'The file declares a document type (DOCTYPE), which GPX never needs and which can carry harmful entities.',
    'Nothing was read. Export the file again, without the declaration.',
  ),
  noPoints: error('The file holds no usable point.', 'Nothing to show. Check that it is the right export.'),
  noTrack: warning('The file holds waypoints but no track and no route.', 'The waypoints were read.'),
  version: warning('The GPX version is "{}"; 1.0 and 1.1 are known.', 'Read as GPX 1.1.'),
  versionMissing: warning('The GPX version is not stated.', 'Read as GPX 1.1.'),
  creatorMissing: warning('The program that wrote the file (creator) is not stated.', 'Read without it.'),

  // Bytes and characters
  badGzip: error('The gzip packing of the file is damaged ({}).', STOPPED),
  encodingUnknown: warning('The character encoding "{}" is not known.', 'Read as UTF-8.'),
  encodingWrong: warning('The file says its encoding is {}, but its bytes are not.', 'Read as UTF-8.'),
  badCharacters: warning('Some letters of a text do not fit the encoding.', 'They are shown as \uFFFD.'),
  nul: warning('NUL characters stand in the file, as after a loss of power.', 'They were left out.'),
  bareAmpersand: warning('A bare "&" stands in a text; XML wants "&amp;".', 'Read as "&".'),
  unknownEntity: warning('An entity that XML does not know stands in a text.', 'Left as written.'),

  // XML
  textBeforeRoot: warning('Something stands before the first element.', 'It was passed over.'),
  textAfterRoot: warning('Something stands after the end of the recording.', 'It was passed over.'),
  lateDeclaration: warning(
    'The XML declaration is not at the start, or is incomplete.',
    'It was passed over.',
  ),
  secondRoot: warning('A second recording follows the end of the first.', 'It was read as well.'),
  crossedTags: error(
    'A closing tag is not that of the element last opened.',
    'The elements left open were taken to end here. Check the points near this line.',
  ),
  strayClosingTag: error('A closing tag belongs to no open element.', STOPPED),
  malformed: error('Not well-formed XML: {}.', 'Passed over. Check the points near this line.'),
  truncated: error(
    'The file ends before the recording does.',
    'Everything up to the last whole point is kept.',
  ),

  // Limits
  gzipBomb: error('Unpacked, the file grows more than {} times; no recording does.', STOPPED),
  tooBig: error('The file is larger than {} MB.', `${STOPPED} Split the file.`),
  tooManyPoints: error('The file holds more than {} points.', `${STOPPED} Split the file.`),
  tooManyTracks: error('The file holds more than {} tracks and routes.', `${STOPPED} Split the file.`),
  tooDeep: error('Elements stand inside one another more than {} deep.', STOPPED),
  tooLong: error('A single value, tag or comment is longer than {} characters.', STOPPED),
  tooBroken: error('The file breaks the rules of XML in more than {} places.', STOPPED),
  textCut: warning('A name or description is longer than {} characters.', 'The rest was cut off.'),

  // Points
  positionMissing: error(
    'A point has no latitude or no longitude, or not as a number.',
    'The point was left out.',
  ),
  positionOutOfRange: error(
    'A point has a latitude beyond 90 or a longitude beyond 180 degrees.',
    'The point was left out.',
  ),
  longitude180: warning('A longitude is given as +180 degrees.', 'Read as -180, the same meridian.'),
  elevationMissing: warning(
    'A point has no elevation.',
    'The slope is unknown where too few points have one.',
  ),
  elevationBad: warning('An elevation is not a number.', 'Taken as unknown.'),
  elevationOutOfRange: warning(
    'An elevation is below {} m or above the highest mountain.',
    'Taken as unknown.',
  ),
  elevationTwice: warning('A point has two elevations.', 'The first was taken.'),
  timeBad: warning('A time is not a date and time.', 'Taken as unknown.'),
  timeZoneMissing: warning('A time has no zone.', 'Taken as UTC.'),
  timeBackwards: warning(
    'The time runs backwards.',
    'The points stay in the order of the file; times there mean little.',
  ),
  duplicate: warning('A point repeats the one before it in everything.', 'The repeat was left out.'),
  emptyTrack: warning('A track or route has no usable point.', 'It was left out.'),
  singlePoint: warning('A track or route has only one point.', 'Kept, but it has no length and no slope.'),
} satisfies Record<string, Fault>;

/** Collects faults; the same one again only counts. */
export class FaultList {
  readonly #found = new Map<Fault, { where: string; what: string; times: number }>();

  /** `line` 0 means the file as a whole. */
  add(fault: Fault, line: number, element = '', detail: string | number = ''): void {
    const seen = this.#found.get(fault);
    if (seen) {
      seen.times++;
      return;
    }
    const place = line > 0 ? `line ${line}` : 'the file';
    const text = typeof detail === 'number' ? detail.toLocaleString('en') : printable(detail);
    this.#found.set(fault, {
      where: element ? `${place}, <${printable(element)}>` : place,
      what: fault.what.replace('{}', () => text),
      times: 1,
    });
  }

  /** Errors first, each group in order of appearance. */
  problems(): Problem[] {
    const all = [...this.#found].map(([{ severity, done }, { where, what, times }]) => ({
      severity,
      where,
      what,
      done,
      times,
    }));
    return [...all.filter((p) => p.severity === 'error'), ...all.filter((p) => p.severity === 'warning')];
  }
}

/** Thrown inside the reader, and caught by it, to leave a parser in the middle of its work. */
export class Stop extends Error {
  constructor(
    readonly fault: Fault,
    readonly detail: string | number = '',
  ) {
    super(fault.what);
  }
}

/** Text from a foreign file, short and without line breaks. */
function printable(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 60)}…` : line;
}
