import wasm from '@automerge/automerge/automerge.wasm?url';
import { copiesFrom, copiesToBytes } from '../../src/archive/exchange.ts';
import { withOutcome } from '../../src/archive/filing.ts';
import { edited, gradedOf } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import type { Author, Replica } from '../../src/archive/replica.ts';
import { replicaToBytes, startReplicas } from '../../src/archive/replica.ts';
import { readTrip } from '../../src/archive/share.ts';
import type { Trip } from '../../src/archive/trip.ts';
import * as archive from '../../src/workers/archive.ts';

declare global {
  function kept(n: number): Promise<void>;
  function begun(n: number): Promise<void>;
}

/** The track to which most edits go; another comes with every fourth. */
const MAIN = 'main';
const DAY_MS = 86_400_000;

let trip: Trip;
/** The same track on another leader's device, which knows nothing of what is done here. */
let theirs: Replica;

/** Files what the edits go to, where it is not there. */
export async function open(text: string): Promise<void> {
  trip = { ...readTrip(text).value!, id: MAIN, name: MAIN };
  if ((await archive.takeTrack(MAIN)).value === null) await archive.fileTrip(trip, author(0));
  await startReplicas(() => fetch(wasm));
  const { value } = await archive.copyTracks([MAIN]);
  theirs = copiesFrom(value!).value![0].replica;
}

/** Edits without end. */
export async function editOn(from: number): Promise<void> {
  const kinds = [fileVisit, noteOutcome, mergeTheirs, fileTrack];
  for (let n = from; ; n++) {
    void begun(n);
    if (await kinds[n % kinds.length](n)) void kept(n);
    else return;
  }
}

/** Each answers whether the archive said that it is kept. */
async function fileVisit(n: number): Promise<boolean> {
  const [first, ...rest] = trip.obstacles;
  const measured = { ...first, stretch: { ...first.stretch, lengthM: 2 + (n % 900) / 100 } };
  const { value } = await archive.fileTrip({ ...trip, obstacles: [measured, ...rest] }, author(n));
  return value?.newVisits === 1;
}

async function noteOutcome(n: number): Promise<boolean> {
  const { value } = await archive.takeTrack(MAIN);
  return value !== null && (await archive.editTrack(noted(value.graded, n), value.heads, author(n))) === null;
}

async function mergeTheirs(n: number): Promise<boolean> {
  theirs = edited(theirs, noted(gradedOf(theirs).value!, n), author(n));
  const { value } = await archive.mergeCopies(copiesToBytes([replicaToBytes(theirs)]), author(n).atMs);
  return value?.[0] === MAIN;
}

async function fileTrack(n: number): Promise<boolean> {
  const image = new Uint8Array(20_000).fill(n % 256);
  image.set([0xff, 0xd8, 0xff]);
  const photos = [{ id: 'photo', caption: String(n), image }];
  const obstacles = trip.obstacles.map((one) => ({ ...one, photos }));
  const { value } = await archive.fileTrip({ ...trip, id: `track ${n}`, obstacles }, author(n));
  return value !== null;
}

function noted(graded: GradedTrack, n: number): GradedTrack {
  const outcome = { id: `outcome ${n}`, ...author(n), vehicle: trip.vehicles[0], said: null, note: '' };
  const how = { lineId: 'main', direction: trip.direction, rung: 'as it comes', did: 'went' } as const;
  return withOutcome(graded, trip.obstacles[0].id, { ...outcome, ...how });
}

function author(n: number): Author {
  return { by: String(n), atMs: 1e12 + n * DAY_MS };
}

/** The last `window` edits that are there; none where what the archive tells of them does not fit together. */
export async function numbersThere(window: number): Promise<number[]> {
  const rows = (await archive.findTracks()).value ?? [];
  const main = await numbersOf(MAIN, ({ surveyed: [{ visits, outcomes }] }) => [
    ...visits.map(({ by }) => Number(by)),
    ...outcomes.map(({ id }) => Number(id.split(' ')[1])),
  ]);
  const filed = rows.map(({ id }) => Number(id.split(' ')[1])).filter((n) => n > 0);
  const newest = Math.max(...main, ...filed);
  const beside: number[] = [];
  for (const n of filed.filter((one) => one > newest - window)) {
    const [found] = await numbersOf(`track ${n}`, ({ surveyed }) =>
      surveyed.flatMap(({ visits, obstacle: { photos } }) =>
        visits.length === 1 && photos[0].image[9] === n % 256 ? Number(photos[0].caption) : [],
      ),
    );
    if (found === n) beside.push(n);
  }
  return [...main, ...beside].filter((n) => n > Math.max(0, newest - window));

  /** Whole and without a choice to make, and row, record and history tell the same. */
  async function numbersOf(id: string, of: (graded: GradedTrack) => number[]): Promise<number[]> {
    const { value, problems } = await archive.takeTrack(id);
    const bare = await archive.takeTracksBare([id]);
    const history = await archive.historyOfTrack(id);
    const row = rows.find((one) => one.id === id);
    if (value === null || row === undefined || history.value === null) return [];
    const counts = (graded: GradedTrack) => ({
      visitCount: graded.surveyed.reduce((sum, { visits }) => sum + visits.length, 0),
      outcomeCount: graded.surveyed.reduce((sum, { outcomes }) => sum + outcomes.length, 0),
    });
    const told = [row, ...(bare.value ?? []).map(counts)];
    const { visitCount, outcomeCount } = counts(value.graded);
    const agree = told.every((one) => one.visitCount === visitCount && one.outcomeCount === outcomeCount);
    const faults = [...problems, ...bare.problems, ...history.problems, ...value.conflicts];
    return agree && told.length === 2 && faults.length === 0 && row.conflictCount === 0
      ? of(value.graded)
      : [];
  }
}
