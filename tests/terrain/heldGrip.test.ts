import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contentsOf } from '../../src/archive/out/contents.ts';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import { rowOf } from '../../src/convoy/matrix.ts';
import { placesOn } from '../../src/convoy/places.ts';
import { gradeBySizes } from '../../src/grade/rating.ts';
import { rankOf } from '../../src/grade/verdict.ts';
import { withHeld } from '../../src/terrain/heldGrip.ts';
import type { HeldGrip } from '../../src/terrain/surface.ts';
import { gripOf, MATERIALS } from '../../src/terrain/surface.ts';

const demo = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!;
const obstacle = demo.obstacles.find(({ name }) => name === 'Hobnail ruts')!;
const { material, condition } = obstacle.stretch.surface;
const held: readonly HeldGrip[] = [{ material, condition, peak: 0.08 }];
const trip = { ...demo, obstacles: [obstacle], vehicles: demo.vehicles.slice(0, 2), heldGrips: held };

describe('ground that is held slipperier', () => {
  it.each(MATERIALS)('%s is no less slippery wet than it is held dry', (material) => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 1.2, noNaN: true }), (peak) => {
        const held: readonly HeldGrip[] = [{ material, condition: 'dry', peak }];
        const wet = gripOf({ material, condition: 'wet', held }).peak.low;
        expect(wet).toBeLessThanOrEqual(gripOf({ material, condition: 'wet' }).peak.low);
        expect(wet).toBeLessThanOrEqual(Math.max(peak, 0));
      }),
      { seed: 20281, numRuns: 50 },
    );
  });

  it('dry is not told by what is held of it wet', () => {
    const held: readonly HeldGrip[] = [{ material: 'earth', condition: 'wet', peak: 0.02 }];
    expect(gripOf({ material: 'earth', condition: 'dry', held })).toEqual(
      gripOf({ material: 'earth', condition: 'dry' }),
    );
  });
});

describe('a trip that holds ground slipperier', () => {
  it('judges no vehicle better for it, and some worse', () => {
    const words = (of: readonly HeldGrip[]) =>
      rowOf(placesOn(trip.track, trip.obstacles, of)[0], trip.vehicles, 'as recorded').flatMap(
        ({ verdicts }) => verdicts.map(({ verdict }) => rankOf(verdict.word)),
      );
    const [printed, slipperier] = [words([]), words(held)];
    const worse = (a: number, b: number) => (rankOf('does not go') > rankOf('goes') ? a > b : a < b);
    expect(printed.some((rank, i) => worse(rank, slipperier[i]))).toBe(false);
    expect(slipperier.some((rank, i) => worse(rank, printed[i]))).toBe(true);
  });

  it('is graded no easier', () => {
    const level = (of: readonly HeldGrip[]) =>
      gradeBySizes(placesOn(trip.track, trip.obstacles, of)[0], 'dry', 'australia').level;
    expect(level(held)).toBeGreaterThanOrEqual(level([]));
  });

  it('says so wherever the ground is named to others', () => {
    const [place] = contentsOf(trip, 'metric').places;
    expect(place.description).toMatch(/held slipperier after outcomes: 0\.08 instead of 0\.\d\d/);
    expect(contentsOf({ ...trip, heldGrips: [] }, 'metric').places[0].description).not.toContain('held');
  });

  it('keeps what it holds beside its obstacles, whose records stay as they are', () => {
    const back = readTrip(tripToJson(trip));
    expect(back.problems).toEqual([]);
    expect(back.value!.heldGrips).toEqual(held);
    expect(tripToJson(trip)).not.toContain('"held"');
    expect(withHeld(obstacle, held)).toBe(withHeld(obstacle, held));
    expect(withHeld(obstacle, [])).toBe(obstacle);
  });

  it('holds the least where a file does not tell the value', () => {
    const file = JSON.parse(tripToJson(trip)) as { heldGrips: { peak: unknown }[] };
    file.heldGrips[0].peak = 'slippery';
    const { value, problems } = readTrip(JSON.stringify(file));
    expect(problems.length).toBeGreaterThan(0);
    expect(value!.heldGrips).toEqual([{ material, condition, peak: 0.02 }]);
  });
});
