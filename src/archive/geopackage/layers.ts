import { chosenHeights, heightsOf } from '../../route/heights.ts';
import { spansOf } from '../../route/station.ts';
import type { Track } from '../../route/track.ts';
import type { ForeignPath } from '../filed.ts';
import { todays } from '../filed.ts';
import type { GradedTrack, Outcome, Surveyed, Visit } from '../gradedTrack.ts';
import { gradedRecord } from '../gradedRecord.ts';
import type { Line, Obstacle, Stretch } from '../../terrain/obstacle.ts';
import { wrapLng } from '../../route/ellipsoid.ts';
import { cutAtAntimeridian } from '../out/antimeridian.ts';
import { pathsOf } from '../out/contents.ts';
import { recordToJson } from '../share.ts';

type Value = string | number | null;

/** A column: its name, its type of SQLite as GeoPackage allows it, and its value of what the row stands for. */
type Column<T> = readonly [
  name: string,
  type: 'TEXT' | 'REAL' | 'INTEGER' | 'DATETIME',
  of: (row: T) => Value,
];

/** One table that people look at: its columns, and which rows a track has in it. */
interface Layer<T> {
  readonly table: string;
  readonly description: string;
  /** Null for a table without places. */
  readonly geometry: 'MULTILINESTRING' | 'POINT' | null;
  readonly columns: readonly Column<T>[];
  readonly rowsOf: (graded: GradedTrack) => readonly T[];
  /** Empty where it is not known where it lies. */
  readonly pathsOf: (row: T) => readonly ForeignPath[];
}

/** A layer with what a row stands for left out of sight. */
export interface Table extends Omit<Layer<never>, 'columns' | 'rowsOf' | 'pathsOf'> {
  readonly columns: readonly (readonly [name: string, type: string])[];
  readonly rowsOf: (graded: GradedTrack) => readonly Row[];
}

export interface Row {
  readonly paths: readonly ForeignPath[];
  readonly values: readonly Value[];
}

/** The column that holds a graded track whole, and the table that it stands in. */
export const RECORD = 'record';

interface At {
  readonly graded: GradedTrack;
  readonly surveyed: Surveyed;
  readonly obstacle: Obstacle;
}

interface LineAt extends At {
  readonly line: Line;
}
interface VisitAt extends At {
  readonly visit: Visit;
}
interface OutcomeAt extends At {
  readonly outcome: Outcome;
}

const TRACKS: Layer<GradedTrack> = {
  table: 'tracks',
  description:
    'Tracks as recorded; heights above mean sea level, as recorded or off the elevation model that is named. The column record holds each whole, as JSON; the other columns and tables are read off it.',
  geometry: 'MULTILINESTRING',
  columns: [
    ['track_id', 'TEXT', ({ id }) => id],
    ['name', 'TEXT', ({ name }) => name],
    ['area', 'TEXT', ({ area }) => area],
    ['note', 'TEXT', ({ note }) => note],
    ['elevation_from', 'TEXT', ({ track }) => (track ? elevationFrom(track) : null)],
    ['length_m', 'REAL', ({ track }) => (track ? track.distanceM[track.length - 1] : null)],
    ['obstacle_count', 'INTEGER', ({ surveyed }) => surveyed.length],
    [RECORD, 'TEXT', (graded) => recordToJson(gradedRecord(graded))],
  ],
  rowsOf: (graded) => [graded],
  pathsOf: ({ track }) =>
    track === null
      ? []
      : spansOf(track).flatMap(({ from, to }) =>
          cutAtAntimeridian({
            lng: track.lng.subarray(from, to),
            lat: track.lat.subarray(from, to),
            elevationM: heightsOf(track).elevationM.subarray(from, to),
          }),
        ),
};

/** Whose heights the geometry has. */
function elevationFrom(track: Track): string {
  return chosenHeights(track) === 'model' && track.model ? track.model.name : 'recorded';
}

const OF_OBSTACLE: readonly Column<At>[] = [
  ['track_id', 'TEXT', ({ graded }) => graded.id],
  ['obstacle_id', 'TEXT', ({ obstacle }) => obstacle.id],
];

const OBSTACLES: Layer<At> = {
  table: 'obstacles',
  description: 'Pinned places, on the ground of the newest visit. Slope climbs, camber is left side high.',
  geometry: 'POINT',
  columns: [
    ...OF_OBSTACLE,
    ['name', 'TEXT', ({ obstacle }) => obstacle.name],
    ['preset', 'TEXT', ({ obstacle }) => obstacle.preset],
    ['station_m', 'REAL', ({ obstacle }) => known(obstacle.stationM)],
    ...ground<At>(({ obstacle }) => obstacle.stretch),
    ['features', 'TEXT', ({ obstacle }) => obstacle.stretch.features.map(({ kind }) => kind).join(', ')],
    ['visit_count', 'INTEGER', ({ surveyed }) => surveyed.visits.length],
    ['last_visit', 'DATETIME', ({ surveyed }) => moment(surveyed.visits.at(-1)?.atMs ?? NaN)],
    ['outcome_count', 'INTEGER', ({ surveyed }) => surveyed.outcomes.length],
    ['note', 'TEXT', ({ obstacle }) => obstacle.note],
  ],
  rowsOf: each,
  pathsOf: ({ obstacle: { lng, lat } }) => [
    {
      lng: Float64Array.of(wrapLng(lng)),
      lat: Float64Array.of(lat),
      elevationM: Float64Array.of(NaN),
    },
  ],
};

const LINES: Layer<LineAt> = {
  table: 'lines',
  description: 'Ways through an obstacle: main, offset over the same ground (left is positive), bypass.',
  geometry: 'MULTILINESTRING',
  columns: [
    ...OF_OBSTACLE,
    ['line_id', 'TEXT', ({ line }) => line.id],
    ['kind', 'TEXT', ({ line }) => line.kind],
    ['name', 'TEXT', ({ line }) => line.name],
    ['offset_m', 'REAL', ({ line }) => (line.kind === 'bypass' ? null : known(line.offsetM))],
  ],
  rowsOf: (graded) => each(graded).flatMap((at) => at.obstacle.lines.map((line) => ({ ...at, line }))),
  pathsOf: ({ graded, obstacle, line }) =>
    pathsOf(graded.track, obstacle, line).flatMap((path) => cutAtAntimeridian(path)),
};

const VISITS: Layer<VisitAt> = {
  table: 'visits',
  description: 'Dated measurements of obstacles.',
  geometry: null,
  columns: [
    ...OF_OBSTACLE,
    ['visit_id', 'TEXT', ({ visit }) => visit.id],
    ['measured_at', 'DATETIME', ({ visit }) => moment(visit.atMs)],
    ['measured_by', 'TEXT', ({ visit }) => visit.by],
    ...ground<VisitAt>(({ visit }) => visit.stretch),
    ['note', 'TEXT', ({ visit }) => visit.note],
  ],
  rowsOf: (graded) => each(graded).flatMap((at) => at.surveyed.visits.map((visit) => ({ ...at, visit }))),
  pathsOf: () => [],
};

const OUTCOMES: Layer<OutcomeAt> = {
  table: 'outcomes',
  description: 'What one vehicle really did at an obstacle, and what was said of it before.',
  geometry: null,
  columns: [
    ...OF_OBSTACLE,
    ['outcome_id', 'TEXT', ({ outcome }) => outcome.id],
    ['happened_at', 'DATETIME', ({ outcome }) => moment(outcome.atMs)],
    ['told_by', 'TEXT', ({ outcome }) => outcome.by],
    ['vehicle', 'TEXT', ({ outcome }) => outcome.vehicle.name],
    ['vehicle_class', 'TEXT', ({ outcome }) => outcome.vehicle.vehicleClass],
    ['line_id', 'TEXT', ({ outcome }) => outcome.lineId],
    ['direction', 'TEXT', ({ outcome }) => outcome.direction],
    ['aids', 'TEXT', ({ outcome }) => outcome.rung],
    ['said', 'TEXT', ({ outcome }) => outcome.said],
    ['did', 'TEXT', ({ outcome }) => outcome.did],
    ['note', 'TEXT', ({ outcome }) => outcome.note],
  ],
  rowsOf: (graded) =>
    each(graded).flatMap((at) => at.surveyed.outcomes.map((outcome) => ({ ...at, outcome }))),
  pathsOf: () => [],
};

/** What a GeoPackage of ours holds, in this order. */
export const TABLES: readonly Table[] = [
  tableOf(TRACKS),
  tableOf(OBSTACLES),
  tableOf(LINES),
  tableOf(VISITS),
  tableOf(OUTCOMES),
];

function tableOf<T>({ columns, rowsOf, pathsOf, ...rest }: Layer<T>): Table {
  return {
    ...rest,
    columns: columns.map(([name, type]) => [name, type]),
    rowsOf: (graded) =>
      rowsOf(graded).map((row) => ({ paths: pathsOf(row), values: columns.map(([, , of]) => of(row)) })),
  };
}

function each(graded: GradedTrack): readonly At[] {
  return graded.surveyed.map((surveyed) => ({ graded, surveyed, obstacle: todays(surveyed) }));
}

function ground<T>(stretchOf: (row: T) => Stretch): readonly Column<T>[] {
  return [
    ['ground_length_m', 'REAL', (row) => known(stretchOf(row).lengthM)],
    ['slope_rad', 'REAL', (row) => known(stretchOf(row).plane.slopeRad)],
    ['camber_rad', 'REAL', (row) => known(stretchOf(row).plane.camberRad)],
    ['material', 'TEXT', (row) => stretchOf(row).surface.material],
    ['condition', 'TEXT', (row) => stretchOf(row).surface.condition],
    ['room_left_m', 'REAL', (row) => known(stretchOf(row).corridor.leftM)],
    ['room_right_m', 'REAL', (row) => known(stretchOf(row).corridor.rightM)],
    ['headroom_m', 'REAL', (row) => known(stretchOf(row).corridor.headroomM)],
  ];
}

function known(value: number | null): number | null {
  return value === null || Number.isNaN(value) ? null : value;
}

/** As GeoPackage writes a DATETIME (OGC 12-128r18, table 1); null where no year of four digits can say it. */
function moment(atMs: number): string | null {
  const date = new Date(atMs);
  const year = date.getUTCFullYear();
  return year >= 0 && year <= 9999 ? date.toISOString() : null;
}
