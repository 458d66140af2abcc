import type { Box, Levels } from '../trackRow.ts';

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
  /** Of those bytes, as `hashOf` gives it; null where the first version was published, which had none. */
  readonly hash: string | null;
}

/** Tracks that lie near to each other, told together where an area is too wide to tell each: how many, where, one's name. */
export interface Crowd {
  readonly count: number;
  /** The middle of them. */
  readonly lng: number;
  readonly lat: number;
  readonly name: string;
  /** The ground that they have their middles in. */
  readonly box: Box;
}

/** A crowd as a tile has it. */
export type CrowdEntry = readonly [count: number, lng: number, lat: number, name: string];

/** Tiles with rows are of about 7 km at 45° of latitude: as long as many a track, and few tracks begin within one. */
export const ZOOM = 12;

/** Zooms whose tiles hold crowds, for wider areas. */
export const CROWD_ZOOMS = [0, 2, 4, 6, 8, 10] as const;

/** A tile of crowds has eight by eight of them at most. */
export const CROWD_STEPS = 3;

export const PUBLISHED_FORMAT = 'rutline-published';

/** The second has crowds, hashes, and long tracks in every part that they pass through. */
export const PUBLISHED_VERSION = 2;

/** The file that readers are told of, and what the name of the other ends with. */
export const INDEX_NAME = 'tracks.pmtiles';
export const RECORDS_ENDING = '.records';
