import { gradedRecord } from '../../../src/archive/gradedRecord.ts';
import { levelsOf } from '../../../src/archive/levels.ts';
import { recordToJson } from '../../../src/archive/share.ts';
import type { Box, TrackRow } from '../../../src/archive/trackRow.ts';
import { matrixOf } from '../../../src/convoy/matrix.ts';
import type { Vehicle } from '../../../src/vehicle/vehicle.ts';
import { VEHICLE_CLASSES } from '../../../src/vehicle/vehicle.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import {
  copyTracks,
  editTrack,
  findTracks,
  joinTracks,
  mergeCopies,
  placesOfTracks,
  regradeTracks,
  takeTrack,
  takeTracksBare,
} from '../../../src/workers/archive.ts';
import {
  archiveToGeoJson,
  archiveToGeoPackage,
  archiveToZip,
  readArchiveFile,
} from '../../../src/workers/formats.ts';
import { whoGoes } from '../../../src/workers/whoGoes.ts';
import { trackNumbered } from './tracks.ts';

/** Milliseconds of what is measured, and how many things came of it. */
export interface Measured {
  readonly ms: number;
  readonly count: number;
}

const AUTHOR = { by: 'bench', atMs: 1.7e12 };
const BATCH = 100;

const convoy: Vehicle[] = VEHICLE_CLASSES.map((vehicleClass) => ({
  id: vehicleClass,
  name: vehicleClass,
  driver: '',
  vehicleClass,
  values: classValues(vehicleClass),
  estimated: [],
}));

async function timed<T>(work: () => Promise<T> | T): Promise<readonly [ms: number, value: T]> {
  const start = performance.now();
  const value = await work();
  return [performance.now() - start, value];
}

/** The rows as the database has them, read without the archive. */
function rowsPlainly(): Promise<TrackRow[]> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('rutline');
    opening.onerror = () => reject(new Error('The database does not open.'));
    opening.onsuccess = () => {
      const asked = opening.result.transaction('rows').objectStore('rows').getAll();
      asked.onsuccess = () => {
        opening.result.close();
        resolve(asked.result as TrackRow[]);
      };
    };
  });
}

const idsOf = (count: number) => Array.from({ length: count }, (_, i) => trackNumbered(i).id);

function boxAt(i: number): Box {
  const west = 10 + ((i * 7919) % 900) / 100;
  const south = 40 + ((i * 104729) % 900) / 100;
  return [west, south, west + 0.5, south + 0.5];
}

function overlaps(a: Box, b: Box): boolean {
  return a[0] <= b[2] && a[2] >= b[0] && a[1] <= b[3] && a[3] >= b[1];
}

/** Of 10 obstacles each; answers the bytes of all as plain JSON. */
async function fill(from: number, to: number): Promise<number> {
  let bytes = 0;
  for (let i = from; i < to; i += BATCH) {
    const tracks = Array.from({ length: Math.min(BATCH, to - i) }, (_, k) => trackNumbered(i + k));
    const { value, problems } = await joinTracks(tracks, AUTHOR);
    if (value === null) throw new Error(problems[0]?.what);
    for (const track of tracks) bytes += recordToJson(gradedRecord(track)).length;
  }
  return bytes;
}

async function open(): Promise<Measured> {
  const [ms, { value }] = await timed(() => findTracks());
  return { ms, count: value?.length ?? 0 };
}

/** How long each of some areas takes, and how many tracks lie in each. */
interface Areas {
  readonly ms: readonly number[];
  readonly found: readonly number[];
}

async function areas(count: number): Promise<Areas> {
  const ms: number[] = [];
  const found: number[] = [];
  for (let i = 0; i < count; i++) {
    const [took, { value }] = await timed(() => findTracks({ box: boxAt(i) }));
    ms.push(took);
    found.push(value?.length ?? NaN);
  }
  return { ms, found };
}

/** The convoy over the first tracks, in workers: the first answer and all of them. */
async function goes(count: number): Promise<{ first: Measured; all: Measured }> {
  const start = performance.now();
  let firstMs = NaN;
  let seen = 0;
  for await (const { cells } of whoGoes(idsOf(count), convoy, 'as recorded')) {
    if (Number.isNaN(firstMs)) firstMs = performance.now() - start;
    if (cells.length > 0) seen++;
  }
  return { first: { ms: firstMs, count: 1 }, all: { ms: performance.now() - start, count: seen } };
}

/** Batches of tracks, to be held one at a time. */
function batchesOf<T>(all: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(all.length / BATCH) }, (_, i) =>
    all.slice(i * BATCH, (i + 1) * BATCH),
  );
}

/** All tracks graded by their sizes and the grades put into their rows. */
async function regrade(): Promise<Measured> {
  const ids = ((await findTracks()).value ?? []).map(({ id }) => id);
  const [ms] = await timed(async () => {
    for (const some of batchesOf(ids)) await regradeTracks(some);
  });
  const graded = (await findTracks()).value ?? [];
  return { ms, count: graded.filter(({ levels }) => 'australia' in levels).length };
}

/** To the other window of this browser, which carries it out and in: only text gets from one browser to another. */
const channel = new BroadcastChannel('carried');
const come: Uint8Array[] = [];
let onCome: () => void = () => undefined;
channel.onmessage = ({ data }: MessageEvent<Uint8Array>) => {
  come.push(data);
  onCome();
};

async function nextBytes(): Promise<Uint8Array> {
  while (come.length === 0) await new Promise<void>((resolve) => (onCome = resolve));
  return come.shift()!;
}

/** Sends copies of as many tracks from a number on. */
async function copies(from: number, count: number): Promise<void> {
  const { value } = await copyTracks(idsOf(from + count).slice(from));
  if (value === null) throw new Error('No copies were made.');
  channel.postMessage(value);
}

/** What the other window sent, as text. */
async function carriedOut(): Promise<string> {
  return textOf(await nextBytes());
}

function carriedIn(text: string): void {
  channel.postMessage(bytesOf(text));
}

/** Half a million calls of `String.fromCharCode` with one number each would take longer than what is measured. */
function textOf(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000)
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}

/** One edit in each track: a note of the track, or the note of a visit. */
async function edit(count: number, word: string, where: 'track' | 'visit'): Promise<void> {
  for (const id of idsOf(count)) {
    const { value } = await takeTrack(id);
    if (value === null) throw new Error(`${id} is not there.`);
    const { graded, heads } = value;
    const [first, ...rest] = graded.surveyed;
    const visits = first.visits.map((visit) => ({ ...visit, note: word }));
    const after =
      where === 'track'
        ? { ...graded, note: word }
        : { ...graded, surveyed: [{ ...first, visits }, ...rest] };
    const problem = await editTrack(after, heads, { by: word, atMs: 1.71e12 });
    if (problem !== null) throw new Error(problem.what);
  }
}

/** How many of the tracks have what was edited on either side. */
async function merge(): Promise<Measured> {
  const bytes = await nextBytes();
  const [ms, { value, problems }] = await timed(() => mergeCopies(bytes, 1.72e12));
  if (value === null) throw new Error(problems[0]?.what);
  const tracks = (await takeTracksBare(value)).value ?? [];
  const kept = tracks.filter((track) => track.note !== '' && track.surveyed[0].visits[0].note !== '');
  return { ms, count: kept.length };
}

/** Texts put into a database of their own, the last one to write winning. */
function writePlainly(texts: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('plain', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore('texts');
    opening.onerror = () => reject(new Error('The plain database does not open.'));
    opening.onsuccess = () => {
      const work = opening.result.transaction('texts', 'readwrite', { durability: 'strict' });
      texts.forEach((text, i) => work.objectStore('texts').put(text, i));
      work.oncomplete = () => {
        opening.result.close();
        resolve();
      };
    };
  });
}

type Out = 'GeoPackage' | 'zip' | 'GeoJSON';

const OUTS = { GeoPackage: archiveToGeoPackage, zip: archiveToZip, GeoJSON: archiveToGeoJson };
const NAMES = { GeoPackage: 'archive.gpkg', zip: 'archive.zip', GeoJSON: 'archive.geojson' };

let written: File;

/** All tracks of the archive as a file. */
async function out(count: number, as: Out): Promise<Measured & { readonly bytes: number }> {
  const [ms, { file, problems }] = await timed(() =>
    OUTS[as]({ ids: idsOf(count), names: true, photos: false }),
  );
  if (problems.length > 0) throw new Error(problems[0].what);
  written = new File([file], NAMES[as]);
  return { ms, count, bytes: file.size };
}

/** That file read, its tracks put nowhere. */
async function back(): Promise<Measured> {
  let count = 0;
  const [ms, { problems }] = await timed(() =>
    readArchiveFile(written, (tracks) => void (count += tracks.length)),
  );
  if (problems.length > 0) throw new Error(problems[0].what);
  return { ms, count };
}

/** Milliseconds of a plain way to each of the same, in a page of its own that holds all records at once: what it takes of memory is nobody else's. */
async function plainly(areaCount: number, judged: number, merged: number, count: number) {
  const [openMs, rows] = await timed(rowsPlainly);
  const areasMs: number[] = [];
  const found: number[] = [];
  for (let i = 0; i < areaCount; i++) {
    const box = boxAt(i);
    const [ms, within] = await timed(() => rows.filter((row) => row.box && overlaps(row.box, box)));
    areasMs.push(ms);
    found.push(within.length);
  }
  const met = (await placesOfTracks(idsOf(judged))).value ?? [];
  const [firstMs] = await timed(() => matrixOf(met[0].places, convoy, 'as recorded'));
  const [allMs] = await timed(() => met.forEach(({ places }) => matrixOf(places, convoy, 'as recorded')));
  let gradedMs = 0;
  let textMs = 0;
  let parsedMs = 0;
  let mergeMs = 0;
  let fillMs = 0;
  const held: unknown[] = [];
  for (const some of batchesOf(idsOf(count))) {
    const tracks = (await takeTracksBare(some)).value ?? [];
    gradedMs += (await timed(() => tracks.map(levelsOf)))[0];
    const [ms, texts] = await timed(() => tracks.map((track) => recordToJson(gradedRecord(track))));
    textMs += ms;
    const [parsed, records] = await timed(() => texts.map((text) => JSON.parse(text) as unknown));
    parsedMs += parsed;
    held.push(...records);
    fillMs += (await timed(() => writePlainly(texts)))[0];
    const left = Math.max(0, merged);
    merged -= texts.length;
    if (left > 0) mergeMs += (await timed(() => writePlainly(texts.slice(0, left))))[0];
  }
  if (held.length !== count) throw new Error('Not all records are held.');
  return {
    openMs,
    areas: { ms: areasMs, found },
    firstMs,
    allMs,
    gradedMs,
    textMs,
    parsedMs,
    mergeMs,
    fillMs,
  };
}

async function usage(): Promise<number> {
  return (await navigator.storage.estimate()).usage ?? NaN;
}

const page = {
  fill,
  open,
  areas,
  goes,
  regrade,
  copies,
  carriedOut,
  carriedIn,
  edit,
  merge,
  out,
  back,
  usage,
  plainly,
};

export type ArchivePage = typeof page;

Object.assign(globalThis, { page });
