import { READ_LIMITS } from '../route/limits.ts';

/** What a trip file may hold at most. What goes beyond is left out, with a problem that says so. */
export const TRIP_LIMITS = {
  /** UTF-16 units of the whole file. The longest track that is read takes about 400 million. */
  fileLength: 500_000_000,
  points: READ_LIMITS.points,
  waypoints: 100_000,
  /** A day has some 25 obstacles and 12 vehicles; a club's whole forest, a few hundred. */
  obstacles: 1_000,
  vehicles: 200,
  /** One for each kind of ground there is, and as many again. */
  heldGrips: 50,
  features: 200,
  lines: 50,
  /** Vertices of one bypass as drawn on the map. */
  path: 10_000,
  /** Photos of one obstacle. */
  photos: 24,
  /** Of one photo: what a noisy picture of 1600 × 1200 takes at good quality, twice over. */
  photoBytes: 3_000_000,
  /** Pixels that one photo may claim: six times what ours have, 64 MB when drawn. A small file can claim any number. */
  photoPixels: 16_000_000,
  /** UTF-16 units of a name or note; as much as is read from GPX. */
  textLength: READ_LIMITS.textLength,
  /** UTF-16 units of a radio channel: a number, a name, and one to fall back on. */
  radioLength: 60,
  idLength: 200,
  /** Problems that are listed one by one; a file this damaged is not repaired by reading more. */
  problems: 500,
} as const;

/** What a file of graded tracks may hold at most, over and above what a trip may. */
export const ARCHIVE_LIMITS = {
  tracks: 10_000,
  /** Of one obstacle: one a week for twenty years. */
  visits: 1_000,
  /** Of one obstacle. */
  outcomes: 10_000,
  /** Points of recordings in one file or folder, graded tracks of ours not counted; 200 MB of arrays. */
  points: READ_LIMITS.points,
  /** Bytes of a file of many tracks (GeoPackage, zip, GeoJSON), as it lies on the disk. */
  fileBytes: 400_000_000,
  /**
   * Bytes of a GeoJSON text that is held whole; a longer one is read feature by feature. While it is read it takes five times
   * its size (positions of three numbers: 1 for the text, 3 parsed, 1 as arrays), and 21 times where it is made to take as
   * much as it can (empty records); measured in Node 20, and less where a browser packs its pointers.
   */
  geoJsonBytes: 20_000_000,
  /** Bytes of one feature of such a text, or of GeoJSON within a folder or zip, which are held whole. */
  featureBytes: 100_000_000,
  /**
   * A visit older than a year is no longer today's ground: a wet season lies between. Common practice, no source. Too long
   * lets a washed-out rut be judged as it was; too short has people measure again what did not change.
   */
  staleMs: 365 * 24 * 3_600_000,
  /** How far ahead another device's clock may be. */
  clockMs: 24 * 3_600_000,
  /** Bytes of one graded track with its history: some 50 photos, and a long recording. */
  replicaBytes: 100_000_000,
  /** Changes of single values in one graded track: a hundred a day for thirty years. */
  replicaPuts: 1_000_000,
} as const;

/** What a zip may hold at most. It is unpacked piece by piece, and left alone at the first of these that it passes. */
export const ZIP_LIMITS = {
  entries: 32_000,
  /** All files together, unpacked. */
  bytes: 1_000_000_000,
  /** One file, unpacked. */
  entryBytes: 256_000_000,
  /** How far one file may expand beyond the first bytes; text shrinks 8 to 50 times, a bomb about 1,000 times. */
  ratio: 200,
  graceBytes: 2 ** 24,
} as const;
