import { readFileSync } from 'node:fs';
import type { GradedTrack, Surveyed } from '../../src/archive/gradedTrack.ts';
import type { Author, Replica } from '../../src/archive/replica.ts';
import { heldBy, startReplicas } from '../../src/archive/replica.ts';
import { gradedOf } from '../../src/archive/gradedReplica.ts';
import { readTrip } from '../../src/archive/share.ts';
import { gradedAnew } from '../../src/archive/filing.ts';

const WASM = new URL('../../node_modules/@automerge/automerge/dist/automerge.wasm', import.meta.url);

/** The engine as tests have it: its code from the disk. */
export function engine(): Promise<unknown> {
  return startReplicas(() => readFileSync(WASM));
}

export const ANN: Author = { by: 'Ann', atMs: 1_700_000_000_000 };
export const BEN: Author = { by: 'Ben', atMs: 1_700_000_060_000 };
export const CLEO: Author = { by: 'Cleo', atMs: 1_700_000_120_000 };

/** The trip that is kept in the tests, with all kinds of things in it. */
export const TRIP = readTrip(readFileSync(new URL('in/version-2.json', import.meta.url), 'utf8')).value!;

/** That trip as a graded track with one visit, `v0`, of its one obstacle. */
export function wholeTrack(): GradedTrack {
  let visits = 0;
  return gradedAnew(TRIP, 'track', { ...ANN, newId: () => `v${visits++}` });
}

/** As a replica gives it back: what stands at one place in the order of ids, today's ground that of the newest visit. */
export function canonical(graded: GradedTrack): GradedTrack {
  const surveyed = graded.surveyed.map((one): Surveyed => {
    const visits = byAge(one.visits);
    const obstacle = { ...one.obstacle, stretch: visits[visits.length - 1].stretch };
    return { obstacle, visits, outcomes: byAge(one.outcomes) };
  });
  surveyed.sort(
    (a, b) => a.obstacle.stationM - b.obstacle.stationM || (a.obstacle.id < b.obstacle.id ? -1 : 1),
  );
  return { ...graded, surveyed };
}

function byAge<T extends { readonly id: string; readonly atMs: number }>(list: readonly T[]): T[] {
  return [...list].sort((a, b) => a.atMs - b.atMs || (a.id < b.id ? -1 : 1));
}

export function read(replica: Replica): GradedTrack {
  return gradedOf(replica).value!;
}

/** What a replica holds, to be compared with another. */
export function told(replica: Replica) {
  return Object.fromEntries([...heldBy(replica)].map(([key, values]) => [key, values.map(String).sort()]));
}
