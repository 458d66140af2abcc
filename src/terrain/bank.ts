import type { Values } from '../field.ts';
import { choice, number } from '../field.ts';
import type { Places } from './shape.ts';
import { say } from '../words/words.ts';

/** Ground that rises or falls away beside the line. */
export const bankFields = {
  side: choice(say.terrainFields.bank.side, ['left', 'right']),
  distanceM: number(say.terrainFields.bank.distanceM, 'length', 0.3, 12),
  angleRad: number(say.terrainFields.bank.angleRad, 'angle', 0.0873, 1.4835),
  heightM: number(say.terrainFields.bank.heightM, 'length', -30, 10),
};

export type Bank = { readonly kind: 'bank' } & Values<typeof bankFields>;

export function lay(bank: Bank, { y, first, last, heightsM }: Places): void {
  const beyond = Math.max(0, (bank.side === 'left' ? y : -y) - bank.distanceM);
  const overM = Math.min(Math.abs(bank.heightM), beyond * Math.tan(bank.angleRad));
  heightsM.fill(Math.sign(bank.heightM) * overM, first, last + 1);
}

export function reachM(): readonly [number, number] {
  return [-Infinity, Infinity];
}
