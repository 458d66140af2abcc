import { describe, expect, it } from 'vitest';
import { agreementOf, bearingOf, isWrongGoes } from '../../src/grade/agreement.ts';

describe('what was said against what happened', () => {
  it('agrees where a vehicle did what its verdict led to expect', () => {
    expect(bearingOf({ said: 'goes', did: 'went' })).toBe('as said');
    expect(bearingOf({ said: 'needs momentum', did: 'went with a run' })).toBe('as said');
    expect(bearingOf({ said: 'needs a pull', did: 'was pulled' })).toBe('as said');
    expect(bearingOf({ said: 'does not go', did: 'turned back' })).toBe('as said');
    expect(bearingOf({ said: 'needs a pull', did: 'turned back' })).toBe('as said');
  });

  it('tells the dangerous side from the cautious one', () => {
    expect(bearingOf({ said: 'needs momentum', did: 'turned back' })).toBe('easier said');
    expect(bearingOf({ said: 'does not go', did: 'was pulled' })).toBe('harder said');
    expect(bearingOf({ said: 'not known', did: 'went' })).toBe('nothing said');
    expect(bearingOf({ said: null, did: 'was pulled' })).toBe('nothing said');
  });

  it('finds every wrong goes, and no other', () => {
    expect(isWrongGoes({ said: 'goes', did: 'was pulled' })).toBe(true);
    expect(isWrongGoes({ said: 'goes with care', did: 'went with a run' })).toBe(true);
    expect(isWrongGoes({ said: 'goes', did: 'went' })).toBe(false);
    expect(isWrongGoes({ said: 'needs momentum', did: 'was pulled' })).toBe(false);
  });

  it('counts each outcome once', () => {
    const agreement = agreementOf([
      { said: 'goes', did: 'went' },
      { said: 'goes', did: 'went' },
      { said: 'goes with care', did: 'was pulled' },
      { said: 'does not go', did: 'turned back' },
      { said: null, did: 'went' },
    ]);
    expect(agreement.rows.flatMap(({ did }) => did).reduce((a, b) => a + b)).toBe(5);
    expect(agreement.rows.find(({ said }) => said === 'goes with care')?.did).toEqual([0, 0, 1, 0]);
    expect(agreement.asSaid).toMatchObject({ count: 3, of: 4 });
    expect(agreement.easierSaid).toMatchObject({ count: 1, of: 4 });
    expect(agreement.harderSaid).toMatchObject({ count: 0, of: 4 });
    expect(agreement.wrongGoes).toMatchObject({ count: 1, of: 3 });
  });

  it('has no share of nothing', () => {
    expect(agreementOf([]).asSaid.share).toBeNaN();
  });
});
