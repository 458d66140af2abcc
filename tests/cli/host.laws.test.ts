import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import type { Heads, Replica } from '../../src/archive/replica.ts';
import { hasCome, headsOf, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { ANN, BEN, CLEO, engine, read, told, wholeTrack } from '../archive/replicas.ts';
import type { Hosting } from './hosted.ts';
import { hosting, listed, met } from './hosted.ts';

const RUNS = { seed: 20261125, numRuns: 12 };
const PEOPLE = [ANN, BEN, CLEO];

let host: Hosting;
beforeAll(async () => {
  await engine();
  host = await hosting();
});
afterAll(() => host.close());

/** A person's copy, and how far it and the server had got when they last met. */
interface Held {
  replica: Replica | null;
  base: Heads;
}

let tracks = 0;

/** What one person does: changes a text of theirs, meets the server, or forgets how both stood. */
const anyDeed = fc.record({
  who: fc.nat(PEOPLE.length - 1),
  what: fc.constantFrom('note', 'area', 'meet', 'meet', 'forget'),
  text: fc.constantFrom('wet', 'dry', 'deep'),
});

test('whoever did what and met the server when, after two more rounds all hold the same, and nothing is lost', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyDeed, { maxLength: 12 }), async (deeds) => {
      const graded = { ...wholeTrack(), id: `track ${tracks++}`, track: null, surveyed: [] };
      const first = replicaToBytes(firstFiled(graded, ANN));
      // Cleo has never seen the track.
      const held = PEOPLE.map((_, i): Held => ({ replica: i < 2 ? replicaFrom([first]) : null, base: [] }));
      const made = new Set<string>();
      const meet = async (one: Held) => {
        if (one.replica === null && !(await listed(host)).has(graded.id)) return;
        one.replica = await met(host, graded.id, one.replica, one.base);
        one.base = headsOf(one.replica);
        expect((await listed(host)).get(graded.id)).toEqual(one.base);
      };
      for (const { who, what, text } of deeds) {
        const one = held[who];
        if (what === 'meet') await meet(one);
        else if (what === 'forget') one.base = [];
        else if (one.replica !== null) {
          const now = read(one.replica);
          one.replica = edited(one.replica, { ...now, [what]: `${text} ${PEOPLE[who].by}` }, PEOPLE[who]);
          headsOf(one.replica).forEach((head) => made.add(head));
        }
      }
      for (const one of [...held, ...held]) await meet(one);
      const [mine, ...others] = held.map(({ replica }) => told(replica!));
      for (const theirs of others) expect(theirs).toEqual(mine);
      const heads = held.map(({ replica }) => [...headsOf(replica!)].sort());
      expect(heads[1]).toEqual(heads[0]);
      expect(heads[2]).toEqual(heads[0]);
      expect(hasCome(held[0].replica!, [...made])).toBe(true);
    }),
    RUNS,
  );
});
