import { describe, expect, it } from 'vitest';
import { withOnly } from '../../src/archive/anonymous.ts';
import { attemptsOf, obstacleAt } from '../../src/archive/attempts.ts';
import { gradedAnew, withOutcome } from '../../src/archive/filing.ts';
import type { GradedTrack, Outcome } from '../../src/archive/gradedTrack.ts';
import type { OutcomeWord } from '../../src/grade/outcome.ts';
import { DEMO } from './outTrips.ts';

const FIRST_MS = Date.parse('2024-05-01');
const SECOND_MS = Date.parse('2025-05-01');
const [obstacle] = DEMO.obstacles;

function outcome(did: OutcomeWord, atMs: number, lineId = obstacle.lines[0].id): Outcome {
  return {
    id: `${did} ${atMs}`,
    atMs,
    by: 'R. Moss',
    vehicle: { ...DEMO.vehicles[0], driver: 'Someone' },
    lineId,
    direction: 'as recorded',
    rung: 'low range',
    said: 'goes',
    did,
    note: '',
  };
}

/** Measured twice, the second time on wet clay. */
function twice(...outcomes: readonly Outcome[]): GradedTrack {
  const graded = gradedAnew(DEMO, 'g', { by: 'R. Moss', atMs: FIRST_MS, newId: () => 'first' });
  const [one, ...rest] = graded.surveyed;
  const stretch = { ...obstacle.stretch, surface: { material: 'clay', condition: 'wet' } } as const;
  const visits = [...one.visits, { id: 'second', atMs: SECOND_MS, by: '', stretch, note: '' }];
  const track = { ...graded, surveyed: [{ ...one, visits }, ...rest] };
  return outcomes.reduce<GradedTrack>((so, next) => withOutcome(so, obstacle.id, next), track);
}

describe('an outcome tells of the ground', () => {
  it('that was measured last before it', () => {
    const made = attemptsOf(twice(outcome('went', FIRST_MS + 1), outcome('was pulled', SECOND_MS + 1)));
    expect(made.map(({ surface, went }) => [surface.material, went])).toEqual([
      [obstacle.stretch.surface.material, true],
      ['clay', false],
    ]);
    expect(made[1].attempt.obstacle.stretch.surface.material).toBe('clay');
  });

  it('of the first visit, where it came before any', () => {
    const [one] = twice().surveyed;
    expect(obstacleAt(one, 0).stretch).toBe(one.visits[0].stretch);
  });

  it('but not who took a run, nor on a line that is gone', () => {
    expect(
      attemptsOf(twice(outcome('went with a run', SECOND_MS), outcome('went', SECOND_MS, 'gone'))),
    ).toEqual([]);
  });
});

describe('a file of graded tracks', () => {
  const track = twice(outcome('went', SECOND_MS));

  it('names nobody unless asked', () => {
    const text = JSON.stringify(withOnly(track, { names: false, photos: false }));
    expect(text).not.toContain('R. Moss');
    expect(text).not.toContain('Someone');
    expect(JSON.stringify(withOnly(track, { names: true, photos: true }))).toContain('R. Moss');
  });

  it('carries no photos unless asked, and everything else', () => {
    const photo = { id: 'p', caption: '', image: new Uint8Array(3) };
    const [one, ...rest] = track.surveyed;
    const shot = {
      ...track,
      surveyed: [{ ...one, obstacle: { ...one.obstacle, photos: [photo] } }, ...rest],
    };
    const bare = withOnly(shot, { names: true, photos: false });
    expect(bare.surveyed[0].obstacle.photos).toEqual([]);
    expect(bare.surveyed[0].visits).toEqual(one.visits);
    expect(withOnly(shot, { names: true, photos: true })).toEqual(shot);
  });
});
