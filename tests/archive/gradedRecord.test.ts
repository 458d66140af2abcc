import { describe, expect, test } from 'vitest';
import { joined } from '../../src/archive/filing.ts';
import { gradedFrom, gradedRecord } from '../../src/archive/gradedRecord.ts';
import { recordToJson } from '../../src/archive/share.ts';
import { wholeTrack } from './replicas.ts';

describe('a visit without a date', () => {
  test('counts as the newest, and its ground as not known: no easier one comes to the front', () => {
    const [one] = wholeTrack().surveyed;
    const later = { ...one.visits[0], id: 'later', atMs: one.visits[0].atMs + 1000 };
    const graded = { ...wholeTrack(), surveyed: [{ ...one, visits: [...one.visits, later] }] };
    const record = JSON.parse(recordToJson(gradedRecord(graded))) as {
      surveyed: { visits: { atMs: unknown }[] }[];
    };
    record.surveyed[0].visits[0].atMs = 'last summer';
    const { value, problems } = gradedFrom(record);
    const visits = value!.surveyed[0].visits;
    expect(visits.map(({ id }) => id)).toEqual(['later', one.visits[0].id]);
    expect(visits[1].atMs).toBe(later.atMs);
    expect(visits[1].stretch.lengthM).toBeNaN();
    expect(visits[0].stretch).toEqual(later.stretch);
    expect(problems).toMatchObject([{ severity: 'error', where: 'surveyed[0].visits[0].atMs' }]);
  });
});

test('of two records of one track the own stays where both have something, and neither loses what it alone has', () => {
  const own = wholeTrack();
  const [one] = own.surveyed;
  const more = { ...one.visits[0], id: 'theirs', atMs: one.visits[0].atMs + 1000 };
  const changed = {
    obstacle: {
      ...one.obstacle,
      lines: one.obstacle.lines.map((line) => ({ ...line, name: 'theirs' })),
    },
    visits: [{ ...one.visits[0], note: 'theirs' }, more],
    outcomes: one.outcomes,
  };
  const all = joined(own, { ...own, name: 'theirs', surveyed: [changed] });
  expect(all.name).toBe(own.name);
  expect(all.surveyed).toEqual([{ ...one, visits: [...one.visits, more] }]);
});
