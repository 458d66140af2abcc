import { beforeAll, describe, expect, test } from 'vitest';
import { conflictsOf, historyOf, resolved } from '../../src/archive/conflict.ts';
import { edited, firstFiled, gradedOf } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack, Surveyed } from '../../src/archive/gradedTrack.ts';
import type { Replica } from '../../src/archive/replica.ts';
import { candidatesIn, headsOf, merged, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { rowOf } from '../../src/convoy/matrix.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Line, Obstacle, Stretch } from '../../src/terrain/obstacle.ts';
import { ANN, BEN, CLEO, engine, read, TRIP, wholeTrack as trackOfTrip } from './replicas.ts';

beforeAll(engine);

type Change = (one: Surveyed) => Surveyed;

function withOne(graded: GradedTrack, change: Change): GradedTrack {
  return { ...graded, surveyed: graded.surveyed.map(change) };
}

const newestGround =
  (change: (stretch: Stretch) => Stretch): Change =>
  (one) => ({
    ...one,
    visits: one.visits.map((visit, i) =>
      i === one.visits.length - 1 ? { ...visit, stretch: change(visit.stretch) } : visit,
    ),
  });

const obstacle =
  (change: (obstacle: Obstacle) => Obstacle): Change =>
  (one) => ({ ...one, obstacle: change(one.obstacle) });

const features = (change: (features: readonly Feature[]) => readonly Feature[]): Change =>
  newestGround((stretch) => ({ ...stretch, features: change(stretch.features) }));

const lines = (change: (line: Line) => Line[]): Change =>
  obstacle((one) => ({ ...one, lines: one.lines.flatMap(change) }));

const sized = (kind: Feature['kind'], values: object): Change =>
  features((all) => all.map((feature) => (feature.kind === kind ? { ...feature, ...values } : feature)));

/** The trip's track with every slope and camber known, so that all of it can be judged. */
function wholeTrack(): GradedTrack {
  const measured = (stretch: Stretch): Stretch => ({ ...stretch, plane: { slopeRad: 0.1, camberRad: 0.05 } });
  const bypasses = lines((line) =>
    line.kind === 'bypass' ? [{ ...line, stretch: measured(line.stretch) }] : [line],
  );
  return withOne(withOne(trackOfTrip(), newestGround(measured)), bypasses);
}

/** Without the shapes of a kind, the others with how they were measured. */
function without(kind: Feature['kind']): Change {
  return newestGround((stretch) => {
    const kept = stretch.features.flatMap((feature, i) => (feature.kind === kind ? [] : [i]));
    const hows = Object.entries(stretch.hows).flatMap(([path, how]) => {
      const [first, at, name] = path.split('.');
      if (first !== 'features') return [[path, how] as const];
      const now = kept.indexOf(Number(at));
      return now < 0 ? [] : [[`features.${now}.${name}`, how] as const];
    });
    return { ...stretch, features: kept.map((i) => stretch.features[i]), hows: Object.fromEntries(hows) };
  });
}

function copyOf(replica: Replica): Replica {
  return replicaFrom([replicaToBytes(replica)])!;
}

/** What comes of Ann and Ben changing the same track without knowing of each other. */
function both(ann: Change, ben: Change, from = wholeTrack()): Replica {
  const first = firstFiled(from, CLEO);
  const heads = headsOf(first);
  const byAnn = edited(first, withOne(from, ann), ANN, heads);
  return edited(byAnn, withOne(from, ben), BEN, heads);
}

function groundOf(replica: Replica): Stretch {
  return read(replica).surveyed[0].obstacle.stretch;
}

/** The word of each line for the vehicle of the trip. */
function words(replica: Replica): string[] {
  const place = { obstacle: read(replica).surveyed[0].obstacle, trackSlope: null };
  const [cell] = rowOf(place, TRIP.vehicles, 'as recorded');
  return cell.verdicts.map(({ verdict }) => verdict.word);
}

describe('a depth that two people measured at once', () => {
  const replica = () => both(sized('rut', { depthM: 0.3 }), sized('rut', { depthM: 0.1 }));

  test('is told with both, who measured them and when, and what it is', () => {
    expect(conflictsOf(replica())).toMatchObject([
      {
        spot: {
          of: 'visit',
          obstacleId: 'o1',
          obstacleName: 'Everything at once',
          id: 'v0',
          atMs: ANN.atMs,
          feature: { kind: 'rut', number: 1 },
          field: 'depthM',
          table: { kind: 'number', quantity: 'size' },
          isJudged: true,
        },
      },
    ]);
    const [{ claims }] = conflictsOf(replica());
    const told = claims.map(({ value, how, by, atMs }) => ({ value, how, by, atMs }));
    expect(told.sort((a, b) => a.atMs - b.atMs)).toEqual([
      { value: 0.3, how: 'taped', ...ANN },
      { value: 0.1, how: 'taped', ...BEN },
    ]);
  });

  test('is judged by neither until someone chooses; a bypass over other ground still is', () => {
    const torn = replica();
    const before = words(firstFiled(wholeTrack(), CLEO));
    expect(before[0]).not.toBe('not known');
    expect(words(torn)).toEqual(['not known', 'not known', before[2]]);
    expect(gradedOf(torn).problems).toEqual([]);
    const [{ key, claims }] = conflictsOf(torn);
    const chosen = claims.find(({ value }) => value === 0.3)!;
    const settled = resolved(torn, key, chosen.id, CLEO)!;
    expect(groundOf(settled).features[0]).toMatchObject({ depthM: 0.3 });
    expect(words(settled)).not.toContain('not known');
    expect(historyOf(settled).at(-1)).toMatchObject({
      by: 'Cleo',
      changes: [{ spot: { field: 'depthM' }, after: { value: 0.3, how: 'taped' } }],
    });
    expect(historyOf(settled).at(-1)!.changes[0].before).toHaveLength(2);
  });

  test('chosen differently by two people at once is open again', () => {
    const torn = replica();
    const [{ key, claims }] = conflictsOf(torn);
    const one = resolved(copyOf(torn), key, claims[0].id, ANN)!;
    const other = resolved(copyOf(torn), key, claims[1].id, BEN)!;
    const again = conflictsOf(merged(one, other));
    expect(again).toHaveLength(1);
    expect(again[0].claims.map(({ by }) => by).sort()).toEqual(['Ann', 'Ben']);
    const agreed = merged(one, resolved(copyOf(torn), key, claims[0].id, BEN)!);
    expect(conflictsOf(agreed)).toEqual([]);
  });

  test('is no longer to be chosen once someone has, nor where both came to say the same', () => {
    const torn = replica();
    const [{ key, claims }] = conflictsOf(torn);
    const settled = resolved(copyOf(torn), key, claims[0].id, ANN)!;
    const [stands] = candidatesIn(settled)(key);
    expect(resolved(settled, key, stands.id, CLEO)).toBeNull();
    const agreed = merged(settled, resolved(copyOf(torn), key, claims[0].id, BEN)!);
    const said = candidatesIn(agreed)(key);
    expect(said.map(({ by }) => by).sort()).toEqual(['Ann', 'Ben']);
    for (const { id } of said) expect(resolved(agreed, key, id, CLEO)).toBeNull();
  });

  test('is told before what no verdict follows from', () => {
    const from = wholeTrack();
    const first = firstFiled(from, CLEO);
    const heads = headsOf(first);
    const told = (name: string, depthM: number) => ({ ...withOne(from, sized('rut', { depthM })), name });
    const torn = edited(edited(first, told('Ford', 0.3), ANN, heads), told('Weir', 0.1), BEN, heads);
    expect(conflictsOf(torn).map(({ spot }) => spot.isJudged)).toEqual([true, false]);
  });

  test('of an older visit leaves the newest ground as it is', () => {
    const from = withOne(wholeTrack(), (one) => ({
      ...one,
      visits: [...one.visits, { ...one.visits[0], id: 'v1', atMs: ANN.atMs + 1000 }],
    }));
    const older = (depthM: number): Change => {
      const change = sized('rut', { depthM });
      return (one) => {
        const [first, ...rest] = one.visits;
        return { ...one, visits: [...change({ ...one, visits: [first] }).visits, ...rest] };
      };
    };
    const torn = both(older(0.3), older(0.1), from);
    expect(conflictsOf(torn)).toHaveLength(1);
    const [{ visits }] = read(torn).surveyed;
    expect(visits[0].stretch.lengthM).toBeNaN();
    expect(groundOf(torn)).toEqual(groundOf(firstFiled(from, CLEO)));
  });
});

test('the same value entered by both is no conflict', () => {
  const replica = both(sized('hole', { depthM: 0.4 }), sized('hole', { depthM: 0.4 }));
  expect(conflictsOf(replica)).toEqual([]);
  expect(groundOf(replica).features[1]).toMatchObject({ depthM: 0.4 });
});

test('a value and how it was got stay together: nobody taped what someone else judged by eye', () => {
  const deeper = sized('hole', { depthM: 0.35 });
  const taped = newestGround((stretch) => ({
    ...stretch,
    hows: { ...stretch.hows, 'features.1.depthM': 'taped' },
  }));
  const [{ claims }] = conflictsOf(both(deeper, taped));
  expect(claims.map(({ value, how }) => [value, how]).sort()).toEqual([
    [0.2, 'taped'],
    [0.35, null],
  ]);
});

describe('shapes that have no name', () => {
  const rock: Feature = { kind: 'rock', xM: 1, yM: 0, heightM: 0.2, lengthM: 0.4, widthM: 0.4 };

  test('are kept when both add one', () => {
    const replica = both(
      features((all) => [...all, rock]),
      features((all) => [...all, { ...rock, xM: 4 }]),
    );
    expect(conflictsOf(replica)).toEqual([]);
    const rocks = groundOf(replica).features.filter(({ kind }) => kind === 'rock');
    expect(rocks).toHaveLength(3);
  });

  test('keep their sizes when one before them goes', () => {
    const replica = both(without('rut'), sized('softPatch', { coneIndexPa: 200_000 }));
    expect(conflictsOf(replica)).toEqual([]);
    const found = groundOf(replica);
    expect(found.features.map(({ kind }) => kind)).not.toContain('rut');
    expect(found.features.at(-1)).toMatchObject({ kind: 'softPatch', coneIndexPa: 200_000 });
    expect(found.hows).toEqual({ lengthM: 'paced', 'plane.slopeRad': 'taped' });
  });

  test('that one takes out and the other changes stay, and nothing is judged there until someone chooses', () => {
    const replica = both(without('hole'), sized('hole', { depthM: 0.6 }));
    const conflicts = conflictsOf(replica);
    expect(conflicts).toMatchObject([
      { spot: { field: 'there', feature: { kind: 'hole' }, isJudged: true } },
    ]);
    expect(groundOf(replica).lengthM).toBeNaN();
    expect(groundOf(replica).features[1]).toMatchObject({ kind: 'hole', depthM: 0.6 });
    const [{ key, claims }] = conflicts;
    const choose = (there: boolean) =>
      resolved(copyOf(replica), key, claims.find(({ value }) => value === there)!.id, CLEO)!;
    expect(groundOf(choose(true)).features[1]).toMatchObject({ kind: 'hole', depthM: 0.6 });
    expect(groundOf(choose(false)).features.map(({ kind }) => kind)).not.toContain('hole');
    expect(groundOf(choose(false)).lengthM).toBe(14);
  });
});

describe('what is judged with the ground', () => {
  test.each<[string, Change, Change]>([
    [
      'an offset',
      lines((l) => [l.kind === 'offset' ? { ...l, offsetM: 0.5 } : l]),
      lines((l) => [l.kind === 'offset' ? { ...l, offsetM: -0.5 } : l]),
    ],
    [
      'a bypass that is taken out and changed',
      lines((l) => (l.kind === 'bypass' ? [] : [l])),
      lines((l) => [l.kind === 'bypass' ? { ...l, name: 'by the ford' } : l]),
    ],
    ['where it lies', obstacle((o) => ({ ...o, stationM: 90 })), obstacle((o) => ({ ...o, stationM: 100 }))],
  ])('%s: in conflict, no line is judged', (_, ann, ben) => {
    const replica = both(ann, ben);
    expect(conflictsOf(replica)).toMatchObject([{ spot: { isJudged: true } }]);
    expect(new Set(words(replica))).toEqual(new Set(['not known']));
  });

  test('when it was measured: the later claim counts, and its ground is not known', () => {
    const from = withOne(wholeTrack(), (one) => ({
      ...one,
      visits: [...one.visits, { ...one.visits[0], id: 'v1', atMs: ANN.atMs + 1000 }],
    }));
    const dated =
      (atMs: number): Change =>
      (one) => ({
        ...one,
        visits: one.visits.map((visit) => (visit.id === 'v0' ? { ...visit, atMs } : visit)),
      });
    const replica = both(dated(0), dated(ANN.atMs + 5000), from);
    expect(conflictsOf(replica)).toMatchObject([{ spot: { field: 'atMs' } }]);
    expect(read(replica).surveyed[0].visits.map(({ id }) => id)).toEqual(['v1', 'v0']);
    expect(groundOf(replica).lengthM).toBeNaN();
  });

  test('the track: with two of them no slope is certain', () => {
    const from = wholeTrack();
    const first = firstFiled(from, CLEO);
    const heads = headsOf(first);
    const renamed = (name: string) => ({ ...from, track: { ...from.track!, name } });
    const replica = edited(edited(first, renamed('one'), ANN, heads), renamed('two'), BEN, heads);
    expect(conflictsOf(replica)).toMatchObject([{ spot: { of: 'track', field: 'track', isJudged: true } }]);
    expect(new Set(words(replica))).toEqual(new Set(['not known']));
  });

  test('but not a name or a note', () => {
    const replica = both(
      obstacle((one) => ({ ...one, name: 'Ford', note: 'deep' })),
      obstacle((one) => ({ ...one, name: 'The ford', note: 'shallow' })),
    );
    expect(conflictsOf(replica).map(({ spot }) => [spot.field, spot.isJudged])).toEqual([
      ['name', false],
      ['note', false],
    ]);
    expect(groundOf(replica)).toEqual(groundOf(firstFiled(wholeTrack(), CLEO)));
  });
});

test('an obstacle that one takes out while another measures it stays until someone chooses', () => {
  const from = wholeTrack();
  const first = firstFiled(from, CLEO);
  const heads = headsOf(first);
  const gone = edited(first, { ...from, surveyed: [] }, ANN, heads);
  expect(read(gone).surveyed).toEqual([]);
  const replica = edited(gone, withOne(from, sized('rut', { depthM: 0.5 })), BEN, heads);
  expect(read(replica).surveyed).toHaveLength(1);
  const [{ key, spot, claims }] = conflictsOf(replica);
  expect(spot).toMatchObject({ of: 'obstacle', field: 'there' });
  const out = claims.find(({ value }) => value === false)!;
  expect(out.by).toBe('Ann');
  expect(read(resolved(replica, key, out.id, CLEO)!).surveyed).toEqual([]);
});

test('history tells first what was first, though the clock of who came after was slow', () => {
  const from = wholeTrack();
  const first = firstFiled(from, CLEO);
  const after = edited(first, { ...from, note: 'a gate' }, { ...ANN, atMs: CLEO.atMs - 3_600_000 });
  expect(historyOf(after).map(({ by }) => by)).toEqual(['Cleo', 'Ann']);
});

test('history says who did what: filed, corrected, taken out', () => {
  const first = firstFiled(wholeTrack(), ANN);
  const second = edited(first, withOne(read(first), sized('rut', { depthM: 0.3 })), BEN);
  const third = edited(second, withOne(read(second), without('rut')), CLEO);
  const [filed, corrected, out] = historyOf(third);
  expect(filed).toMatchObject({ by: 'Ann', atMs: ANN.atMs, isFirst: true });
  expect(corrected).toMatchObject({
    by: 'Ben',
    isFirst: false,
    changes: [
      {
        spot: { field: 'depthM' },
        before: [{ value: 0.25, how: 'taped' }],
        after: { value: 0.3, how: 'taped' },
      },
    ],
  });
  expect(out).toMatchObject({ by: 'Cleo', changes: [{ spot: { field: 'there' }, after: { value: false } }] });
});

test('ground that two people filed with another shape in one place is not known until someone chooses one of them', () => {
  const step = features(([, ...others]) => [
    { kind: 'ledge', xM: 0.5, riseM: 0.3, faceRad: 1.4, skewRad: 0 },
    ...others,
  ]);
  const one = firstFiled(wholeTrack(), ANN);
  const other = firstFiled(withOne(wholeTrack(), step), BEN);
  for (const start of [merged(one, other), merged(other, one)]) {
    expect(groundOf(start).lengthM).toBeNaN();
    expect(conflictsOf(start).map(({ spot }) => spot.field)).toContain('kind');
    let now = start;
    for (const { key, claims } of conflictsOf(start))
      now = resolved(now, key, claims.find(({ by }) => by === 'Ben')!.id, CLEO)!;
    expect(gradedOf(now)).toEqual(gradedOf(other));
  }
});
