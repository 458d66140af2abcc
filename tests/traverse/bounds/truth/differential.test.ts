import { describe, expect, it } from 'vitest';
import { effort } from '../../../../src/traverse/bounds/differential.ts';

describe('what a differential lets two wheels do', () => {
  // Engineering ToolBox, "Tractive effort", worked example: 2000 kg on four equal wheels, adhesion 0.5, two driven:
  // 2453 N a wheel, 4905 N both. Tolerance 1 N.
  it('two equal wheels give 4905 N however they are joined', () => {
    const wheelN = 0.5 * (2000 / 4) * 9.81;
    expect(Math.abs(wheelN - 2453)).toBeLessThan(1);
    for (const coupling of [
      { kind: 'open' },
      { kind: 'biased', ratio: 3 },
      { kind: 'braked', share: 0.5 },
      { kind: 'locked' },
    ] as const)
      expect(Math.abs(effort(wheelN, wheelN, coupling) - 4905)).toBeLessThan(1);
  });

  // "Differential (mechanical device): loss of traction": an open differential gives both sides equal torque, so the
  // wheel on good ground gets what the slipping one can react.
  it('open: a wheel in the air leaves nothing for the other', () => {
    expect(effort(0, 3000, { kind: 'open' })).toBe(0);
    expect(effort(1000, 3000, { kind: 'open' })).toBe(2000);
  });

  // Torque-bias ratio, component explainers: 3:1 splits 75 % to 25 %; beyond it the slow side gets ratio × the fast side.
  it('biased 3:1 carries 75 % on the better wheel, and nothing with a wheel in the air', () => {
    const total = effort(1000, 9000, { kind: 'biased', ratio: 3 });
    expect(total).toBe(4000);
    expect((total - 1000) / total).toBe(0.75);
    expect(effort(0, 9000, { kind: 'biased', ratio: 3 })).toBe(0);
    expect(effort(1000, 2000, { kind: 'biased', ratio: 3 })).toBe(3000);
  });

  // Derived from the same laws: F = μN left + μN right.
  it('locked: each wheel holds what it can', () => {
    expect(effort(0, 3000, { kind: 'locked' })).toBe(3000);
    expect(effort(1000, 3000, { kind: 'locked' })).toBe(4000);
  });

  // Common practice, no source: brake traction control moves drive to the wheel that stands, less than a locker does.
  it('braked: between open and locked', () => {
    const braked = effort(0, 3000, { kind: 'braked', share: 0.5 });
    expect(braked).toBeGreaterThan(effort(0, 3000, { kind: 'open' }));
    expect(braked).toBeLessThan(effort(0, 3000, { kind: 'locked' }));
  });
});
