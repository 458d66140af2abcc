import type { Values } from '../field.ts';
import { choice, number } from '../field.ts';

/** Ground that rises or falls away beside the line. */
export const bankFields = {
  side: choice('Side', ['left', 'right'], 'Side of the main line, looking along the recorded direction.'),
  distanceM: number('Distance', 'length', 0.3, 12, 'Tape from the main line to its foot or its edge.'),
  angleRad: number('Angle', 'angle', 0.0873, 1.4835, 'Inclinometer on the face.'),
  heightM: number('Height', 'length', -30, 10, 'Its top above the line; a drop is negative.'),
};

export type Bank = { readonly kind: 'bank' } & Values<typeof bankFields>;

export function heightM(bank: Bank, _x: number, y: number): number {
  const beyond = (bank.side === 'left' ? y : -y) - bank.distanceM;
  if (beyond <= 0) return 0;
  return Math.sign(bank.heightM) * Math.min(Math.abs(bank.heightM), beyond * Math.tan(bank.angleRad));
}

export function reachM(): readonly [number, number] {
  return [-Infinity, Infinity];
}
