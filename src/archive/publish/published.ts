import { gzipSync } from 'fflate';
import { zxyToTileId } from 'pmtiles';
import type { GradedTrack } from '../gradedTrack.ts';
import { gradedRecord } from '../gradedRecord.ts';
import { recordToJson } from '../share.ts';
import type { Box, Levels } from '../trackRow.ts';
import { trackRowOf } from '../trackRow.ts';
import { tileFile } from './tileFile.ts';
import { tileOf } from './webTile.ts';

/** One track as a tile tells it: enough to find it, and where its whole record lies in the file of records. */
export interface PublishedRow {
  readonly id: string;
  readonly name: string;
  readonly area: string;
  readonly box: Box;
  readonly lengthM: number;
  readonly obstacleCount: number;
  readonly lastVisitMs: number | null;
  readonly levels: Levels;
  /** First byte and count of bytes. */
  readonly record: readonly [at: number, length: number];
}

/** Tiles are of about 7 km at 45° of latitude: as long as many a track, and few tracks begin within one. */
export const ZOOM = 12;

export const PUBLISHED_FORMAT = 'rutline-published';

/** Records one after the other, each packed by itself, so that one can be read alone. */
export interface Records {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly rows: readonly PublishedRow[];
  /** Names of tracks that have no place, and so cannot be published. */
  readonly nowhere: readonly string[];
}

/** @param levelsOf grades by sizes */
export function recordsOf(tracks: readonly GradedTrack[], levelsOf: (track: GradedTrack) => Levels): Records {
  const parts: Uint8Array[] = [];
  const rows: PublishedRow[] = [];
  const nowhere: string[] = [];
  let at = 0;
  for (const graded of tracks) {
    const bare = withoutPeople(graded);
    const { id, name, area, box, lengthM, obstacleCount, lastVisitMs } = trackRowOf(bare, 0, 0);
    if (box === null) {
      nowhere.push(name);
      continue;
    }
    const bytes = gzipSync(new TextEncoder().encode(recordToJson(gradedRecord(bare))), { mtime: 0 });
    const record = [at, bytes.length] as const;
    rows.push({ id, name, area, box, lengthM, obstacleCount, lastVisitMs, levels: levelsOf(bare), record });
    parts.push(bytes);
    at += bytes.length;
  }
  const bytes = new Uint8Array(at);
  parts.forEach((part, i) => bytes.set(part, rows[i].record[0]));
  return { bytes, rows, nowhere };
}

/** The file that is asked first. `recordsName` is the file of the records, beside it. */
export function indexOf(rows: readonly PublishedRow[], recordsName: string): Uint8Array<ArrayBuffer> {
  const tiles = new Map<number, PublishedRow[]>();
  for (const row of rows) {
    const [west, south, east, north] = row.box;
    const id = zxyToTileId(ZOOM, ...tileOf((west + east) / 2, (south + north) / 2, ZOOM));
    tiles.set(id, [...(tiles.get(id) ?? []), row]);
  }
  const packed = [...tiles].map(([id, list]) => ({
    id,
    bytes: gzipSync(new TextEncoder().encode(JSON.stringify(list)), { mtime: 0 }),
  }));
  const metadata = { format: PUBLISHED_FORMAT, version: 1, records: recordsName, tracks: rows.length };
  return tileFile(packed, ZOOM, boxAround(rows), metadata);
}

/**
 * The ground and the lines, and nobody: without who measured and when each point was recorded, without notes, photos, and
 * what became of people's vehicles.
 */
export function withoutPeople(graded: GradedTrack): GradedTrack {
  const { track } = graded;
  return {
    ...graded,
    note: '',
    track: track && { ...track, description: '', timeS: new Float64Array(track.length).fill(NaN) },
    waypoints: graded.waypoints.map((one) => ({ ...one, description: '' })),
    surveyed: graded.surveyed.map(({ obstacle, visits }) => ({
      obstacle: { ...obstacle, note: '', photos: [] },
      visits: visits.map((visit) => ({ ...visit, by: '', note: '' })),
      outcomes: [],
    })),
  };
}

function boxAround(rows: readonly PublishedRow[]): Box {
  let [west, south, east, north] = [180, 90, -180, -90];
  for (const { box } of rows) {
    west = Math.min(west, box[0]);
    south = Math.min(south, box[1]);
    east = Math.max(east, box[2]);
    north = Math.max(north, box[3]);
  }
  return rows.length === 0 ? [-180, -85, 180, 85] : [west, south, east, north];
}
