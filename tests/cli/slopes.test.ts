import { describe, expect, test } from 'vitest';
import { rutline } from './run.ts';

interface Slopes {
  readonly answer: readonly {
    readonly lengthM: number;
    readonly segments: readonly { readonly fromM: number; readonly toM: number; readonly slopeRad: number }[];
  }[];
}

const CLIMB = 'tests/cli/in/broken.gpx';

describe.concurrent('slopes', () => {
  test('prints a table of what was read before a file broke off, and says that it did', async () => {
    const { code, out, err } = await rutline('slopes', CLIMB);
    expect(code).toBe(1);
    expect(err).toContain('ends before the recording does');
    expect(out).toContain('Invented climb, 0.30 km, 4 points');
    expect(out).toMatch(/0\.00 km +0\.30 km +5\.7°, 10 %, 1 in 10\.0/);
  });

  test('a climb is a descent the other way', async () => {
    const [there, back] = await Promise.all([
      rutline('slopes', CLIMB, '--json'),
      rutline('slopes', CLIMB, '--json', '--reversed'),
    ]).then((runs) => runs.map(({ out }) => (JSON.parse(out) as Slopes).answer[0]));
    const { lengthM } = there;
    expect(there.segments[0].slopeRad).toBeCloseTo(0.0998, 3);
    expect(back.segments.map(({ fromM, toM, slopeRad }) => ({ fromM, toM, slopeRad }))).toEqual(
      there.segments.toReversed().map(({ fromM, toM, slopeRad }) => ({
        fromM: lengthM - toM,
        toM: lengthM - fromM,
        slopeRad: -slopeRad,
      })),
    );
  });

  test('speaks feet and miles when asked', async () => {
    const { out } = await rutline('slopes', CLIMB, '--imperial');
    expect(out).toContain('0.19 mi');
    expect(out).toContain('98.4 ft');
  });
});
