import { describe, expect, test } from 'vitest';
import { briefingOf } from '../../src/brief/brief.ts';
import { matrix, order, outing, places } from './outing.ts';

function briefing(direction: 'as recorded' | 'reversed' = 'as recorded') {
  const about = outing(direction);
  return briefingOf(about, places(about), matrix(about), order(about));
}

describe('a briefing', () => {
  test('meets the obstacles in order of travel, measured from where the convoy sets off', () => {
    const [there, back] = [briefing(), briefing('reversed')];
    expect(there.stops.map(({ number, obstacle }) => [number, obstacle.id])).toEqual([
      [1, 'o1'],
      [2, 'o2'],
    ]);
    expect(back.stops.map(({ number, obstacle }) => [number, obstacle.id])).toEqual([
      [1, 'o2'],
      [2, 'o1'],
    ]);
    const lengthM = there.trackLengthM;
    expect(there.stops.map(({ distanceM }) => distanceM)).toEqual([96, 200]);
    expect(back.stops.map(({ distanceM }) => distanceM)).toEqual([lengthM - 200, lengthM - 96]);
  });

  test('shows the ground as the convoy comes to it', () => {
    const [there, back] = [briefing().stops[0], briefing('reversed').stops[1]];
    expect(back.slope!.slopeRad).toBe(-there.slope!.slopeRad);
    expect(back.stretch.corridor.leftM).toBe(there.stretch.corridor.rightM);
    const [rutThere, rutBack] = [there.stretch.features[0], back.stretch.features[0]];
    expect(rutThere).toMatchObject({ kind: 'rut', centreYM: 0.7, fromM: -5 });
    expect(rutBack).toMatchObject({ kind: 'rut', centreYM: -0.7, toM: 5 });
  });

  test('says who can help wherever a pull is needed, and only there', () => {
    const answers = briefing().stops.flatMap((stop) => stop.answers);
    for (const { verdict, recovery } of answers)
      expect(recovery !== null).toBe(verdict.word === 'needs a pull');
    const pull = answers.find(({ recovery }) => recovery !== null)!.recovery!;
    expect(pull.offers.map(({ vehicleId }) => vehicleId)).toContain('Kestrel');
  });

  test('shows each line as the convoy comes to it, and the ground of a bypass as its own', () => {
    const [there, back] = [briefing().stops[0], briefing('reversed').stops[1]];
    const offset = (stop: typeof there, direction: 'there' | 'back') =>
      stop.answers.find(({ line }) => line.kind === 'offset') ?? expect.fail(direction);
    expect(offset(there, 'there').offsetM).toBeCloseTo(0.4, 12);
    const bypass = briefing().stops[1].answers.find(({ line }) => line.kind === 'bypass')!;
    expect(bypass.stretch.features).toEqual(
      bypass.line.kind === 'bypass' ? bypass.line.stretch.features : null,
    );
    expect(bypass.stretch.features).not.toEqual(there.stretch.features);
    expect(back.answers.every(({ offsetM }) => Math.abs(offsetM) <= 0.4)).toBe(true);
  });

  test('gives each driver every obstacle in order of travel, and says where nothing is asked', () => {
    const told = ({ cards }: ReturnType<typeof briefing>) =>
      cards.map(({ vehicle, calls }) => [
        vehicle.id,
        ...calls.map(({ stop, isPlain }) => `${stop.number}${isPlain ? ' plain' : ''}`),
      ]);
    expect(told(briefing())).toEqual([
      ['Kestrel', '1 plain', '2'],
      ['Wren', '1', '2'],
      ['Teal', '1', '2'],
    ]);
  });

  test('names sizes that cannot be true, and counts what was only judged by eye', () => {
    const about = outing();
    const [first, second] = about.obstacles;
    const deep = {
      ...first,
      stretch: {
        ...first.stretch,
        features: [{ kind: 'hole' as const, xM: 0, yM: 0, lengthM: 0.4, widthM: 0.4, depthM: 1.4 }],
        hows: { 'features.0.depthM': 'taped' as const, 'corridor.leftM': 'paced' as const },
      },
    };
    const doubtful = { ...about, obstacles: [deep, second] };
    const [stop] = briefingOf(doubtful, places(doubtful), matrix(doubtful), order(doubtful)).stops;
    expect(stop.doubts[0].what).toContain('deeper than its own width');
    // slope known, camber not; three of the corridor; five of the hole
    expect(stop.byEye).toEqual({ values: 7, of: 9 });
  });
});
