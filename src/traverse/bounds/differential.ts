import { BRAKE_TRACTION_SHARE, CENTRE_BIAS } from '../../vehicle/assumptions.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import type { Aids } from '../../vehicle/aids.ts';

/** What joins two sides (wheels of an axle, or axles of a vehicle): how far one side may outdo the other. */
export type Coupling =
  | { readonly kind: 'open' }
  | { readonly kind: 'biased'; readonly ratio: number }
  | { readonly kind: 'braked'; readonly share: number }
  | { readonly kind: 'locked' };

/**
 * Effort two sides can give together when each alone could hold `a` and `b` (force units, >= 0).
 *
 * An open differential sends equal torque to both sides, so each gets the lesser: 2·min. A biased one lets the better
 * side have up to `ratio` times the worse: min(lo·(1 + ratio), lo + hi). A locked one gives each what it holds: lo + hi.
 * Braking the spinning side moves a `share` of what locking would gain.
 */
export function effort(a: number, b: number, coupling: Coupling): number {
  const lo = Math.min(a, b);
  const hi = Math.max(a, b);
  switch (coupling.kind) {
    case 'open':
      return 2 * lo;
    case 'biased':
      return Math.min(lo * (1 + coupling.ratio), lo + hi);
    case 'braked':
      return 2 * lo + coupling.share * (hi - lo);
    case 'locked':
      return lo + hi;
  }
}

/** How the two wheels of an axle are joined with these aids engaged. */
export function axleCoupling(values: VehicleValues, aids: Aids, axle: 'front' | 'rear'): Coupling {
  const kind = axle === 'front' ? values.frontDifferential : values.rearDifferential;
  const locked = axle === 'front' ? aids.frontLocked : aids.rearLocked;
  if (kind === 'locker' && locked) return { kind: 'locked' };
  const ratio = axle === 'front' ? values.frontBias : values.rearBias;
  const share = BRAKE_TRACTION_SHARE[values.brakeTraction];
  if (kind === 'limited slip' && ratio > 1) return { kind: 'biased', ratio };
  return share > 0 ? { kind: 'braked', share } : { kind: 'open' };
}

/** How front and rear axle are joined. Null: only one axle is driven. */
export function centreCoupling(values: VehicleValues, aids: Aids): Coupling | null {
  switch (values.drive) {
    case 'front':
    case 'rear':
      return null;
    case 'part-time four':
      return { kind: 'locked' };
    case 'full-time four':
    case 'on-demand four':
      if (values.centre === 'lockable' && aids.centreLocked) return { kind: 'locked' };
      if (values.centre === 'none' && values.drive === 'on-demand four') return { kind: 'locked' };
      if (values.centre === 'limited slip') return { kind: 'biased', ratio: CENTRE_BIAS };
      return values.brakeTraction === 'none'
        ? { kind: 'open' }
        : { kind: 'braked', share: BRAKE_TRACTION_SHARE[values.brakeTraction] };
  }
}
