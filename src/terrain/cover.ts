import type { Feature } from './feature.ts';
import type { SoftPatch } from './softPatch.ts';
import type { Water } from './water.ts';

/** What lies over a ground without changing its heights, in the order of its features. */
export interface Cover {
  readonly isWet: boolean;
  readonly waters: readonly Water[];
  readonly softPatches: readonly SoftPatch[];
}

const known = new WeakMap<readonly Feature[], Cover>();

/**
 * Sought once for the same features: every set of aids asks anew, and code that meets features of ten kinds is compiled
 * again for each kind.
 */
export function coverOf({ features }: { readonly features: readonly Feature[] }): Cover {
  return known.get(features) ?? sought(features);
}

function sought(features: readonly Feature[]): Cover {
  const waters = features.filter((feature): feature is Water => feature.kind === 'water');
  const cover = {
    isWet: waters.length > 0,
    waters,
    softPatches: features.filter((feature): feature is SoftPatch => feature.kind === 'softPatch'),
  };
  known.set(features, cover);
  return cover;
}
