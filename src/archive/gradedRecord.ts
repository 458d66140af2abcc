import type { Reading } from '../problem.ts';
import { VERDICT_WORDS } from '../grade/verdict.ts';
import type { VerdictWord } from '../grade/verdict.ts';
import { tripFields } from './fields.ts';
import type { GradedTrack, Outcome, OutcomeWord, Surveyed, Visit } from './gradedTrack.ts';
import { OUTCOME_WORDS } from './gradedTrack.ts';
import { ARCHIVE_LIMITS, TRIP_LIMITS } from './limits.ts';
import { obstacleFrom } from './obstacleRecord.ts';
import type { Plain } from './reader.ts';
import { Reader } from './reader.ts';
import { stretchFrom } from './stretchRecord.ts';
import type { TrackRecord } from './trackRecord.ts';
import { trackFrom, trackRecord, waypointFrom } from './trackRecord.ts';
import { withModelName } from './upgrade.ts';
import { vehicleFrom } from './vehicleRecord.ts';
import { say } from '../words/words.ts';

export const GRADED_FORMAT = 'rutline-graded-track';

/** The version that is written now. A second one comes with a step from the first, as in `upgrade.ts`. */
export const GRADED_VERSION = 1;

/** A graded track as it is filed. */
export interface GradedRecord extends Omit<GradedTrack, 'track'> {
  readonly format: typeof GRADED_FORMAT;
  readonly version: number;
  readonly track: TrackRecord | null;
}

const GRADED_NAMES = ['format', 'version', 'id', 'name', 'area', 'note', 'track', 'waypoints', 'surveyed'];
const SURVEYED_NAMES = ['obstacle', 'visits', 'outcomes'];
const VISIT_NAMES = ['id', 'atMs', 'by', 'stretch', 'note'];
const OUTCOME_NAMES = ['id', 'atMs', 'by', 'vehicle', 'lineId', 'direction', 'rung', 'said', 'did', 'note'];

export function gradedRecord(graded: GradedTrack): GradedRecord {
  const { track, ...rest } = graded;
  return { format: GRADED_FORMAT, version: GRADED_VERSION, ...rest, track: track && trackRecord(track) };
}

/** Reads a filed graded track, checks all of it and lists what is wrong. Null only where it is none, or a newer one. */
export function gradedFrom(value: unknown): Reading<GradedTrack> {
  const { format, version } = (value ?? {}) as { readonly format?: unknown; readonly version?: unknown };
  if (format !== GRADED_FORMAT)
    return refused(say.gradedFile.noGraded, say.gradedFile.noGradedDone(GRADED_FORMAT));
  if (version !== GRADED_VERSION)
    return refused(say.gradedFile.version(JSON.stringify(version), GRADED_VERSION), say.tripFile.update);
  const reader = new Reader();
  const record = value as Plain;
  reader.names(record, '', GRADED_NAMES);
  const track = trackFrom(reader, withModelName(record.track), 'track');
  const ids: Ids = { obstacles: new Set(), photos: new Set(), visits: new Set(), outcomes: new Set() };
  const graded: GradedTrack = {
    id: reader.id(record.id, 'id', new Set(), 'track'),
    name: reader.text(record.name, 'name'),
    area: reader.text(record.area, 'area'),
    note: reader.text(record.note, 'note'),
    track,
    waypoints: reader
      .list(record.waypoints, 'waypoints', TRIP_LIMITS.waypoints)
      .flatMap((entry, i) => waypointFrom(reader, entry, `waypoints[${i}]`) ?? []),
    surveyed: inOrder(
      reader
        .list(record.surveyed, 'surveyed', TRIP_LIMITS.obstacles)
        .flatMap((entry, i) => surveyedFrom(reader, entry, `surveyed[${i}]`, track, ids, i + 1) ?? []),
    ),
  };
  return { value: graded, problems: reader.problems() };
}

interface Ids {
  readonly obstacles: Set<string>;
  readonly photos: Set<string>;
  readonly visits: Set<string>;
  readonly outcomes: Set<string>;
}

function surveyedFrom(
  reader: Reader,
  value: unknown,
  where: string,
  track: GradedTrack['track'],
  ids: Ids,
  number: number,
): Surveyed | null {
  const record = reader.record(value, where, SURVEYED_NAMES);
  if (record === null) return null;
  const { obstacles, photos: photoIds } = ids;
  const obstacle = obstacleFrom(reader, record.obstacle, `${where}.obstacle`, {
    track,
    ids: obstacles,
    photoIds,
    number,
  });
  if (obstacle === null) return null;
  const visits = visitsFrom(reader, record.visits, `${where}.visits`, ids.visits);
  if (visits.length === 0) {
    reader.error(`${where}.visits`, say.gradedFile.noMoment, say.gradedFile.noMomentDone);
    const id = reader.id(`${obstacle.id}-visit`, where, ids.visits, 'visit');
    visits.push({ id, atMs: 0, by: '', stretch: obstacle.stretch, note: '' });
  }
  const outcomes = reader
    .list(record.outcomes, `${where}.outcomes`, ARCHIVE_LIMITS.outcomes)
    .flatMap((entry, i) => outcomeFrom(reader, entry, `${where}.outcomes[${i}]`, ids.outcomes, i + 1) ?? []);
  return { obstacle, visits, outcomes: oldestFirst(outcomes) };
}

/**
 * The visits, oldest first. Today's ground is that of the newest, so one that cannot be read or has no date is not left
 * out: an older, easier ground would come to the front. It counts as the newest, and its ground as not known.
 */
function visitsFrom(reader: Reader, value: unknown, where: string, ids: Set<string>): Visit[] {
  const list = reader.list(value, where, ARCHIVE_LIMITS.visits);
  const cut = Array.isArray(value) && value.length > list.length;
  const read = list.map((entry, i): Visit => {
    const at = `${where}[${i}]`;
    const record = reader.record(entry, at, VISIT_NAMES) ?? {};
    const stretch = stretchFrom(reader, record.stretch, `${at}.stretch`);
    const atMs = moment(reader, record.atMs, `${at}.atMs`);
    return {
      id: reader.id(record.id, `${at}.id`, ids, `visit-${i + 1}`),
      atMs,
      by: reader.text(record.by, `${at}.by`),
      stretch: Number.isNaN(atMs) ? { ...stretch, lengthM: NaN } : stretch,
      note: reader.text(record.note, `${at}.note`),
    };
  });
  const newestMs = read.reduce((most, { atMs }) => (atMs > most ? atMs : most), 0);
  const dated = oldestFirst(
    read.map((visit) => (Number.isNaN(visit.atMs) ? { ...visit, atMs: newestMs } : visit)),
  );
  const last = dated.at(-1);
  return cut && last
    ? [...dated.slice(0, -1), { ...last, stretch: { ...last.stretch, lengthM: NaN } }]
    : dated;
}

function outcomeFrom(
  reader: Reader,
  value: unknown,
  where: string,
  ids: Set<string>,
  number: number,
): Outcome | null {
  const record = reader.record(value, where, OUTCOME_NAMES);
  if (record === null) return null;
  const atMs = moment(reader, record.atMs, `${where}.atMs`);
  const vehicle = vehicleFrom(reader, record.vehicle, `${where}.vehicle`, { ids: new Set(), number });
  const did = record.did as OutcomeWord;
  if (Number.isNaN(atMs) || vehicle === null || !OUTCOME_WORDS.includes(did)) {
    reader.error(where, say.gradedFile.noOutcome, say.tripFile.wasLeftOut);
    return null;
  }
  const said = record.said === null ? null : (record.said as VerdictWord);
  const known = said === null || VERDICT_WORDS.includes(said);
  if (!known) reader.error(`${where}.said`, say.gradedFile.noVerdict, say.gradedFile.noVerdictDone);
  return {
    id: reader.id(record.id, `${where}.id`, ids, `outcome-${number}`),
    atMs,
    by: reader.text(record.by, `${where}.by`),
    vehicle,
    lineId: reader.text(record.lineId, `${where}.lineId`),
    direction: reader.values(tripFields, { direction: record.direction }, where).values.direction,
    rung: reader.text(record.rung, `${where}.rung`),
    said: known ? said : null,
    did,
    note: reader.text(record.note, `${where}.note`),
  };
}

/** Milliseconds that a date can stand for (ECMA-262, "Time Values and Time Range"); NaN where they are none. */
function moment(reader: Reader, value: unknown, where: string): number {
  if (typeof value === 'number' && Math.abs(value) <= 8.64e15) return value;
  reader.error(where, say.gradedFile.notMilliseconds, say.gradedFile.notMillisecondsDone);
  return NaN;
}

/** Of two at the same moment, one whose ground is not known comes last: it must not be hidden behind the other. */
function oldestFirst<T extends { readonly atMs: number; readonly stretch?: Visit['stretch'] }>(
  list: readonly T[],
): T[] {
  const unknown = ({ stretch }: T) => (stretch && Number.isNaN(stretch.lengthM) ? 1 : 0);
  return [...list].sort((a, b) => a.atMs - b.atMs || unknown(a) - unknown(b));
}

function inOrder(surveyed: readonly Surveyed[]): Surveyed[] {
  return [...surveyed].sort((a, b) => a.obstacle.stationM - b.obstacle.stationM);
}

function refused(what: string, done: string): Reading<GradedTrack> {
  return {
    value: null,
    problems: [{ severity: 'error', where: say.gradedFile.theTrack, what, done, times: 1 }],
  };
}
