import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { copiesFrom, copiesToBytes, isCopies } from '../../src/archive/exchange.ts';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { headsOf, replicaToBytes } from '../../src/archive/replica.ts';
import { anyGradedTrack } from './gradedTracks.ts';
import { ANN, BEN, canonical, engine, read, told, wholeTrack } from './replicas.ts';

const RUNS = { seed: 20261125, numRuns: 5 };

beforeAll(engine);

function replicaOf(graded: GradedTrack) {
  return edited(firstFiled(graded, ANN), { ...graded, note: `${graded.note} again` }, BEN);
}

test('tracks come out of a file as they went in, with their history', () => {
  fc.assert(
    fc.property(fc.array(anyGradedTrack(), { maxLength: 2 }), (tracks) => {
      const replicas = tracks.map(replicaOf);
      const file = copiesToBytes(replicas.map(replicaToBytes));
      expect(isCopies(file)).toBe(true);
      const { value, problems } = copiesFrom(file);
      expect(problems).toEqual([]);
      expect(value!.map(({ id }) => id)).toEqual(tracks.map(({ id }) => id));
      value!.forEach(({ replica }, i) => {
        expect(headsOf(replica)).toEqual(headsOf(replicas[i]));
        const note = `${tracks[i].note} again`;
        expect(read(replica)).toEqual(canonical({ ...tracks[i], note }));
      });
    }),
    RUNS,
  );
});

test('whatever happens to a file, what is read of it is what was written, and the rest is said', () => {
  const replica = replicaOf(wholeTrack());
  const file = copiesToBytes([replicaToBytes(replica), replicaToBytes(replica)]);
  const whole = told(replica);
  const byte = fc.record({ at: fc.nat(file.length - 1), bits: fc.integer({ min: 1, max: 255 }) });
  const damage = fc.record({
    length: fc.oneof(fc.constant(file.length), fc.nat(file.length)),
    bytes: fc.array(byte, { maxLength: 4 }),
    more: fc.uint8Array({ maxLength: 8 }),
  });
  fc.assert(
    fc.property(damage, ({ length, bytes, more }) => {
      const damaged = Uint8Array.from([...file.subarray(0, length), ...more]);
      for (const { at, bits } of bytes) if (at < damaged.length) damaged[at] ^= bits;
      const { value, problems } = copiesFrom(damaged);
      for (const copy of value ?? []) expect(told(copy.replica)).toEqual(whole);
      if ((value?.length ?? 0) < 2 && length > 25) expect(problems.length).toBeGreaterThan(0);
    }),
    { ...RUNS, numRuns: 80 },
  );
});

test.each([
  ['nothing', new Uint8Array(0)],
  ['a picture', Uint8Array.from([0xff, 0xd8, 0xff, 0xe0])],
  ['a trip', new TextEncoder().encode('{"format":"rutline-trip","version":2}\n')],
  ['a newer file', new TextEncoder().encode('rutline-graded-tracks 2\nanything')],
])('%s is refused with a problem', (_, bytes) => {
  expect(copiesFrom(bytes)).toMatchObject({ value: null, problems: [{ severity: 'error' }] });
});
