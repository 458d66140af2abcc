import type { Problem } from '../problem.ts';
import { counted } from '../units.ts';
import { say } from '../words/words.ts';

/** One kind of thing that can be wrong with a GPX file. `{}` in `what` is replaced by a detail. */
export interface Fault extends Pick<Problem, 'severity' | 'what' | 'done'> {
  /** The file as a whole is turned away. */
  readonly refuses: boolean;
}

/** What is wrong, and what was done about it. */
type FaultText = Pick<Fault, 'what' | 'done'>;

const refusal = (text: FaultText): Fault => ({ severity: 'error', ...text, refuses: true });
const error = (text: FaultText): Fault => ({ severity: 'error', ...text, refuses: false });
const warning = (text: FaultText): Fault => ({ severity: 'warning', ...text, refuses: false });

/** Every complaint of the GPX reader. */
export const FAULTS = {
  // The file as a whole
  empty: refusal(say.gpx.empty),
  notXml: refusal(say.gpx.notXml),
  archive: refusal(say.gpx.archive),
  notGpx: refusal(say.gpx.notGpx),
  webPage: refusal(say.gpx.webPage),
  doctype: refusal(say.gpx.doctype),
  noPoints: error(say.gpx.noPoints),
  noTrack: warning(say.gpx.noTrack),
  version: warning(say.gpx.version),
  versionMissing: warning(say.gpx.versionMissing),
  creatorMissing: warning(say.gpx.creatorMissing),

  // Bytes and characters
  badGzip: error(say.gpx.badGzip),
  encodingUnknown: warning(say.gpx.encodingUnknown),
  encodingWrong: warning(say.gpx.encodingWrong),
  badCharacters: warning(say.gpx.badCharacters),
  nul: warning(say.gpx.nul),
  bareAmpersand: warning(say.gpx.bareAmpersand),
  unknownEntity: warning(say.gpx.unknownEntity),

  // XML
  textBeforeRoot: warning(say.gpx.textBeforeRoot),
  textAfterRoot: warning(say.gpx.textAfterRoot),
  lateDeclaration: warning(say.gpx.lateDeclaration),
  secondRoot: warning(say.gpx.secondRoot),
  crossedTags: error(say.gpx.crossedTags),
  strayClosingTag: error(say.gpx.strayClosingTag),
  malformed: error(say.gpx.malformed),
  truncated: error(say.gpx.truncated),

  // Limits
  gzipBomb: error(say.gpx.gzipBomb),
  tooBig: error(say.gpx.tooBig),
  tooManyPoints: error(say.gpx.tooManyPoints),
  tooManyTracks: error(say.gpx.tooManyTracks),
  tooDeep: error(say.gpx.tooDeep),
  tooLong: error(say.gpx.tooLong),
  tooBroken: error(say.gpx.tooBroken),
  textCut: warning(say.gpx.textCut),

  // Points
  positionMissing: error(say.gpx.positionMissing),
  positionOutOfRange: error(say.gpx.positionOutOfRange),
  longitude180: warning(say.gpx.longitude180),
  elevationMissing: warning(say.gpx.elevationMissing),
  elevationBad: warning(say.gpx.elevationBad),
  elevationOutOfRange: warning(say.gpx.elevationOutOfRange),
  elevationTwice: warning(say.gpx.elevationTwice),
  timeBad: warning(say.gpx.timeBad),
  timeZoneMissing: warning(say.gpx.timeZoneMissing),
  timeBackwards: warning(say.gpx.timeBackwards),
  duplicate: warning(say.gpx.duplicate),
  emptyTrack: warning(say.gpx.emptyTrack),
  singlePoint: warning(say.gpx.singlePoint),
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
    const place = line > 0 ? say.problem.line(line) : say.problem.theFile;
    const text = typeof detail === 'number' ? counted(detail) : printable(detail);
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
