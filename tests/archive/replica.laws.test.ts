import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { conflictsOf, historyOf, resolved } from '../../src/archive/conflict.ts';
import { edited, firstFiled, gradedOf } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import type { Author, Replica } from '../../src/archive/replica.ts';
import {
  candidatesIn,
  headsOf,
  merged,
  replicaFrom,
  replicaToBytes,
  bytesSince,
} from '../../src/archive/replica.ts';
import { anyGradedTrack } from './gradedTracks.ts';
import { ANN, BEN, canonical, CLEO, engine, read, told } from './replicas.ts';

const RUNS = { seed: 20261125, numRuns: 12 };

beforeAll(engine);

/** One value somewhere in a graded track, by the names and numbers that lead to it. */
type Path = readonly (string | number)[];

/** Every name, note, measured size and date in it. */
function pathsIn(graded: GradedTrack): Path[] {
  const paths: Path[] = [['name'], ['area'], ['note']];
  graded.surveyed.forEach(({ obstacle, visits, outcomes }, i) => {
    const at = ['surveyed', i];
    paths.push([...at, 'obstacle', 'name'], [...at, 'obstacle', 'note'], [...at, 'obstacle', 'preset']);
    obstacle.lines.forEach((line, n) => {
      paths.push([...at, 'obstacle', 'lines', n, 'name']);
      if (line.kind === 'offset') paths.push([...at, 'obstacle', 'lines', n, 'offsetM']);
      if (line.kind === 'bypass') paths.push([...at, 'obstacle', 'lines', n, 'stretch', 'lengthM']);
    });
    obstacle.photos.forEach((_, n) => paths.push([...at, 'obstacle', 'photos', n, 'caption']));
    visits.forEach(({ stretch }, n) => {
      const visit = [...at, 'visits', n];
      paths.push([...visit, 'by'], [...visit, 'note'], [...visit, 'stretch', 'lengthM']);
      paths.push([...visit, 'stretch', 'corridor', 'leftM'], [...visit, 'stretch', 'plane', 'camberRad']);
      stretch.features.forEach((feature, f) => {
        for (const [name, value] of Object.entries(feature))
          if (typeof value === 'number') paths.push([...visit, 'stretch', 'features', f, name]);
      });
    });
    outcomes.forEach((_, n) => paths.push([...at, 'outcomes', n, 'note'], [...at, 'outcomes', n, 'rung']));
  });
  return paths;
}

function valueAt(record: unknown, path: Path): unknown {
  return path.reduce((at, name) => (at as Record<string | number, unknown>)[name], record);
}

function withValue<T>(record: T, [name, ...rest]: Path, value: unknown): T {
  if (name === undefined) return value as T;
  const next = withValue((record as Record<string | number, unknown>)[name], rest, value);
  if (!Array.isArray(record)) return { ...record, [name]: next };
  return record.map((one: unknown, i) => (i === name ? next : one)) as T;
}

/** A value that was not there, told apart by `n`. */
function another(value: unknown, n: number): unknown {
  if (typeof value === 'string') return `${value}, ${n}`;
  return typeof value === 'number' ? value + n / 8 : n / 8;
}

function changed(graded: GradedTrack, paths: readonly Path[], n: number): GradedTrack {
  return paths.reduce((now, path) => withValue(now, path, another(valueAt(now, path), n)), graded);
}

/** A track with some of its values dealt out to two people, none to both. */
const dealt = anyGradedTrack()
  .map(canonical)
  .chain((graded) =>
    fc.record({
      graded: fc.constant(graded),
      paths: fc.shuffledSubarray(pathsIn(graded), {
        minLength: 2,
        maxLength: Math.min(12, pathsIn(graded).length),
      }),
    }),
  )
  .map(({ graded, paths }) => ({
    graded,
    ann: paths.filter((_, i) => i % 2 === 0),
    ben: paths.filter((_, i) => i % 2 === 1),
  }));

function copyOf(replica: Replica): Replica {
  return replicaFrom([replicaToBytes(replica)])!;
}

describe('a graded track', () => {
  test('comes out of its replica as it went in', () => {
    fc.assert(
      fc.property(anyGradedTrack(), (graded) => {
        const { value } = gradedOf(firstFiled(graded, ANN));
        expect(value).toEqual(canonical(graded));
      }),
      { ...RUNS, numRuns: 20 },
    );
  });

  test('changed by two people at different values has what both changed, and no conflict', () => {
    fc.assert(
      fc.property(dealt, ({ graded, ann, ben }) => {
        const first = firstFiled(graded, CLEO);
        const byAnn = edited(copyOf(first), changed(graded, ann, 1), ANN);
        const byBen = edited(copyOf(first), changed(graded, ben, 2), BEN);
        const both = merged(byAnn, byBen);
        expect(read(both)).toEqual(read(firstFiled(changed(changed(graded, ann, 1), ben, 2), CLEO)));
        expect(conflictsOf(both)).toEqual([]);
      }),
      RUNS,
    );
  });

  test('filed back late undoes nothing that was done meanwhile', () => {
    fc.assert(
      fc.property(dealt, ({ graded, ann, ben }) => {
        const first = firstFiled(graded, CLEO);
        const heads = headsOf(first);
        const meanwhile = edited(first, changed(graded, ann, 1), ANN);
        const back = edited(meanwhile, changed(graded, ben, 2), BEN, heads);
        expect(read(back)).toEqual(read(firstFiled(changed(changed(graded, ann, 1), ben, 2), CLEO)));
      }),
      RUNS,
    );
  });

  test('changed by two people at the same values keeps both, with names and times, until someone chooses', () => {
    fc.assert(
      fc.property(dealt, fc.boolean(), ({ graded, ann }, takeFirst) => {
        const first = firstFiled(graded, CLEO);
        const one = edited(copyOf(first), changed(graded, ann, 1), ANN);
        const other = edited(copyOf(first), changed(graded, ann, 2), BEN);
        let both = merged(one, other);
        const conflicts = conflictsOf(both);
        expect(conflicts).toHaveLength(ann.length);
        for (const { key, claims } of conflicts) {
          const authors = claims.map(({ by, atMs }) => ({ by, atMs }));
          expect(authors).toHaveLength(2);
          expect(authors).toEqual(expect.arrayContaining([ANN, BEN]));
          const chosen = claims.find(({ by }) => by === (takeFirst ? 'Ann' : 'Ben'))!;
          both = resolved(both, key, chosen.id, CLEO)!;
          expect(resolved(both, key, chosen.id, CLEO)).toBeNull();
        }
        expect(conflictsOf(both)).toEqual([]);
        expect(read(both)).toEqual(read(takeFirst ? one : other));
      }),
      RUNS,
    );
  });

  test('is never judged on a size over which two people disagree', () => {
    fc.assert(
      fc.property(dealt, ({ graded, ann, ben }) => {
        const first = firstFiled(graded, CLEO);
        const paths = [...ann, ...ben];
        const both = merged(
          edited(copyOf(first), changed(graded, paths, 1), ANN),
          edited(copyOf(first), changed(graded, paths, 2), BEN),
        );
        const { surveyed } = read(both);
        for (const path of paths) {
          const at = path.indexOf('stretch');
          const ground = valueAt({ surveyed }, path.slice(0, at + 1));
          if (at > 0) expect(ground).toMatchObject({ lengthM: NaN });
          if (path.at(-1) === 'offsetM')
            expect(surveyed[path[1] as number].obstacle.stretch.lengthM).toBeNaN();
        }
        for (const { obstacle, visits } of surveyed)
          if (Number.isNaN(visits.at(-1)!.stretch.lengthM)) expect(obstacle.stretch.lengthM).toBeNaN();
      }),
      RUNS,
    );
  });
});

describe('merging', () => {
  /** Three people's copies of one track, each changed twice. */
  function copies({ graded, ann, ben }: { graded: GradedTrack; ann: Path[]; ben: Path[] }): Replica[] {
    const first = firstFiled(graded, CLEO);
    return [ANN, BEN, CLEO].map((author: Author, n) => {
      const once = edited(copyOf(first), changed(graded, ann, n + 1), author);
      return edited(once, changed(read(once), ben, n + 4), author);
    });
  }

  test('comes to the same in any order, however often', () => {
    fc.assert(
      fc.property(dealt, (given) => {
        const [a, b, c] = copies(given);
        expect(told(merged(a, b))).toEqual(told(merged(b, a)));
        expect(read(merged(a, b))).toEqual(read(merged(b, a)));
        expect(told(merged(merged(a, b), c))).toEqual(told(merged(a, merged(b, c))));
        expect(read(merged(merged(a, b), c))).toEqual(read(merged(a, merged(b, c))));
        expect(told(merged(a, a))).toEqual(told(a));
        const ab = merged(a, b);
        expect(headsOf(merged(ab, b))).toEqual(headsOf(ab));
        expect(historyOf(merged(a, b)).map(({ id }) => id)).toEqual(
          historyOf(merged(b, a)).map(({ id }) => id),
        );
      }),
      { ...RUNS, numRuns: 5 },
    );
  });

  test('of pieces appended to one another gives what the whole gives', () => {
    fc.assert(
      fc.property(dealt, (given) => {
        const [a, b] = copies(given);
        const heads = headsOf(a);
        const whole = merged(a, b);
        const pieces = [replicaToBytes(a), bytesSince(whole, heads)];
        expect(told(replicaFrom(pieces)!)).toEqual(told(whole));
      }),
      { ...RUNS, numRuns: 5 },
    );
  });
});

describe('a record that two people filed without knowing of each other', () => {
  test('stays what it is when they exchange, in either order, and nothing is to be chosen', () => {
    fc.assert(
      fc.property(anyGradedTrack(), (graded) => {
        const one = firstFiled(graded, ANN);
        const other = firstFiled(graded, BEN);
        for (const both of [merged(one, other), merged(other, one)]) {
          expect(read(both)).toEqual(canonical(graded));
          expect(conflictsOf(both)).toEqual([]);
          expect(edited(both, read(both), CLEO)).toBe(both);
        }
      }),
      RUNS,
    );
  });

  test('and then changed each at other values, is in conflict there and nowhere else', () => {
    fc.assert(
      fc.property(dealt, fc.boolean(), ({ graded, ann, ben }, isLater) => {
        const made = (author: Author, paths: readonly Path[], n: number) => {
          const after = changed(graded, paths, n);
          return isLater ? edited(firstFiled(graded, author), after, author) : firstFiled(after, author);
        };
        let both = merged(made(ANN, ann, 1), made(BEN, ben, 2));
        const conflicts = conflictsOf(both);
        const filled = [...ann, ...ben].filter((path) => valueAt(graded, path) !== '');
        expect(conflicts.length).toBeGreaterThanOrEqual(filled.length);
        expect(conflicts.length).toBeLessThanOrEqual(ann.length + ben.length);
        const original = told(firstFiled(graded, CLEO));
        for (const { key } of conflicts) {
          const news = candidatesIn(both)(key).filter(({ value }) => !original[key].includes(String(value)));
          expect(news).toHaveLength(1);
          both = resolved(both, key, news[0].id, CLEO)!;
        }
        expect(read(both)).toEqual(read(firstFiled(changed(changed(graded, ann, 1), ben, 2), CLEO)));
      }),
      RUNS,
    );
  });
});
