import { gunzipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { conflictCount, conflictsOf, resolved } from '../../src/archive/conflict.ts';
import { agreedIn } from '../../src/archive/agreed.ts';
import { gradedFrom } from '../../src/archive/gradedRecord.ts';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { Publishing } from '../../src/archive/publish/publishing.ts';
import type { Replica } from '../../src/archive/replica.ts';
import { merged, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { ANN, BEN, canonical, CLEO, engine, read, wholeTrack } from './replicas.ts';

beforeAll(engine);

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** Noon (UTC) of the day on which Ann filed. */
const NOON_MS = Math.floor(ANN.atMs / DAY_MS) * DAY_MS + DAY_MS / 2;

/** A track with all that publishing takes off: texts, times of points, photos; measured twice on one day. */
function clubTrack(): GradedTrack {
  const whole = wholeTrack();
  const track = whole.track && {
    ...whole.track,
    description: 'Recorded on a wet day',
    timeS: whole.track.timeS.map((_, i) => 1_700_000_000 + i),
  };
  const surveyed = whole.surveyed.map((one) => {
    const [visit] = one.visits;
    const again = { ...visit, id: 'again', atMs: visit.atMs + MINUTE_MS, by: 'Ben', note: 'Lower now' };
    const stretch = { ...visit.stretch, lengthM: visit.stretch.lengthM + 1 };
    const visits = [
      { ...visit, id: 'z', note: 'A tree lies here' },
      { ...again, id: 'a', stretch },
    ];
    return { ...one, obstacle: { ...one.obstacle, note: 'Stay left', stretch }, visits };
  });
  const waypoints = whole.waypoints.map((one) => ({ ...one, description: 'Turn in here' }));
  return { ...whole, note: 'Ask at the farm', track, waypoints, surveyed };
}

/** What another device reads of a track that was published. */
function published(graded: GradedTrack): GradedTrack {
  const publishing = new Publishing();
  publishing.add(graded);
  const [bytes] = publishing.files().records.pieces;
  return gradedFrom(JSON.parse(new TextDecoder().decode(gunzipSync(bytes)))).value!;
}

function copyOf(replica: Replica): Replica {
  return replicaFrom([replicaToBytes(replica)])!;
}

describe('a published track that was taken over and then meets the club’s own', () => {
  test('has nothing to choose, and is the club’s own, whoever takes in whose', () => {
    const club = firstFiled(clubTrack(), ANN);
    const taken = firstFiled(published(clubTrack()), BEN);
    for (const both of [merged(club, taken), merged(taken, club)]) {
      expect(conflictsOf(both)).toEqual([]);
      expect(conflictCount(agreedIn(both))).toBe(0);
      expect(read(both)).toEqual(canonical(clubTrack()));
    }
  });

  test('has the same ground today by itself', () => {
    const [{ obstacle, visits }] = read(firstFiled(published(clubTrack()), BEN)).surveyed;
    expect(visits.map(({ id }) => id)).toEqual(['z', 'a']);
    expect(obstacle.stretch).toEqual(clubTrack().surveyed[0].obstacle.stretch);
  });

  test('keeps what was entered on either side since', () => {
    const club = firstFiled(clubTrack(), ANN);
    const taken = firstFiled(published(clubTrack()), BEN);
    const both = merged(
      edited(copyOf(club), { ...read(club), area: 'North' }, ANN),
      edited(copyOf(taken), { ...read(taken), note: 'Closed in May' }, BEN),
    );
    expect(
      conflictsOf(both)
        .map(({ key }) => key)
        .sort(),
    ).toEqual(['area', 'note']);
  });
});

describe('what people really say differently is still to be chosen', () => {
  function timed(atMs: number): GradedTrack {
    const whole = wholeTrack();
    const surveyed = whole.surveyed.map((one) => ({ ...one, visits: [{ ...one.visits[0], atMs }] }));
    return { ...whole, surveyed };
  }

  test.each([
    ['two times of one day', NOON_MS + MINUTE_MS, NOON_MS + 2 * MINUTE_MS],
    ['a day without a time, and a time of another day', NOON_MS, NOON_MS + DAY_MS + MINUTE_MS],
    ['two days without a time', NOON_MS, NOON_MS + DAY_MS],
  ])('%s', (_, one, other) => {
    const both = merged(firstFiled(timed(one), ANN), firstFiled(timed(other), BEN));
    expect(conflictsOf(both)).toMatchObject([{ spot: { of: 'visit', field: 'atMs', isJudged: true } }]);
    expect(read(both).surveyed[0].obstacle.stretch.lengthM).toBeNaN();
  });

  test('two times of one day beside the day without a time, of which that one is no claim', () => {
    const all = [NOON_MS, NOON_MS + MINUTE_MS, NOON_MS - MINUTE_MS];
    const three = all.map((atMs, i) => firstFiled(timed(atMs), [ANN, BEN, CLEO][i])).reduce(merged);
    const [{ key, claims }] = conflictsOf(three);
    expect(claims.map(({ value }) => value).sort()).toEqual([all[1], all[2]].sort());
    const chosen = resolved(three, key, claims[0].id, CLEO)!;
    expect(conflictsOf(chosen)).toEqual([]);
    expect(read(chosen).surveyed[0].visits[0].atMs).toBe(claims[0].value);
  });

  test('a note that one took out while another wrote it anew', () => {
    const first = firstFiled({ ...wholeTrack(), note: 'A gate' }, CLEO);
    const both = merged(
      edited(copyOf(first), { ...read(first), note: '' }, ANN),
      edited(copyOf(first), { ...read(first), note: 'A locked gate' }, BEN),
    );
    expect(conflictsOf(both)).toMatchObject([{ key: 'note' }]);
  });

  test('a name that one of them did not give', () => {
    const both = merged(firstFiled(wholeTrack(), ANN), firstFiled({ ...wholeTrack(), name: '' }, BEN));
    expect(conflictsOf(both)).toMatchObject([{ key: 'name' }]);
  });

  test('a recorded track of which one has other points', () => {
    const bare = published(clubTrack());
    const track = bare.track && { ...bare.track, lat: bare.track.lat.map((lat) => lat + 0.001) };
    const both = merged(firstFiled(clubTrack(), ANN), firstFiled({ ...bare, track }, BEN));
    expect(conflictsOf(both)).toMatchObject([{ key: 'track' }]);
  });
});
