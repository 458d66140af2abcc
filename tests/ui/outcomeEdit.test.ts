import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/convoy/matrix.ts';
import type { RungVerdict, Verdict, VerdictWord } from '../../src/grade/verdict.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { outcomeOf, saidOf, todaysOutcome } from '../../src/ui/outcomeEdit.ts';

const rung = (name: string, word: VerdictWord) => ({ rung: { name }, word }) as RungVerdict;

function verdict(...ladder: RungVerdict[]): Verdict {
  return { ...ladder[ladder.length - 1], ladder };
}

const cell: Cell = {
  obstacleId: 'o',
  vehicleId: 'v',
  verdicts: [
    { lineId: 'main', verdict: verdict(rung('as it comes', 'does not go')) },
    { lineId: 'left', verdict: verdict(rung('as it comes', 'needs a pull'), rung('low range', 'goes')) },
  ],
  best: 1,
};
const vehicle = { id: 'v', name: 'Wagon', driver: 'Someone' } as Vehicle;
const noting = {
  id: 'x',
  atMs: 1000,
  by: '',
  vehicle,
  direction: 'as recorded',
  did: 'went',
  named: false,
} as const;

describe('an outcome noted with one tap', () => {
  it('is on the line and with the aids that were advised', () => {
    expect(outcomeOf(noting, cell)).toMatchObject({
      lineId: 'left',
      rung: 'low range',
      said: 'goes',
      did: 'went',
    });
  });

  it('names the driver only where that was ticked', () => {
    expect(outcomeOf(noting, cell).vehicle.driver).toBe('');
    expect(outcomeOf({ ...noting, named: true }, cell).vehicle.driver).toBe('Someone');
  });

  it('meets what was said of another line or rung, once corrected', () => {
    expect(saidOf(cell, 'left', 'as it comes')).toBe('needs a pull');
    expect(saidOf(cell, 'main', 'low range')).toBeNull();
    expect(saidOf(cell, 'gone', 'low range')).toBeNull();
  });

  it('is the one of today, the newest, of this vehicle and this direction', () => {
    const one = outcomeOf(noting, cell);
    const outcomes = [
      one,
      { ...one, id: 'y', atMs: 2000 },
      { ...one, id: 'z', direction: 'reversed' as const },
    ];
    expect(todaysOutcome({ outcomes }, 'v', 'as recorded', 3000)?.id).toBe('y');
    expect(todaysOutcome({ outcomes }, 'w', 'as recorded', 3000)).toBeUndefined();
    expect(todaysOutcome({ outcomes }, 'v', 'as recorded', 3 * 86_400_000)).toBeUndefined();
  });
});
