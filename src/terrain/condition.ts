import type { NumberField } from '../field.ts';
import type { Quantity } from '../units.ts';
import type { FeatureKind } from './feature.ts';
import { featureFields } from './feature.ts';
import type { How } from './measure.ts';
import { plusMinus } from './measure.ts';
import type { Stretch } from './obstacle.ts';

/** A size as one visit found it. */
export interface Found {
  /** SI, of the series' quantity. */
  readonly value: number;
  readonly plusMinus: number;
  readonly how: How;
}

/** One telling size through the visits. */
export interface Series {
  readonly kind: FeatureKind;
  readonly quantity: Quantity;
  /** One a visit, in their order; null where that visit found no such shape. */
  readonly found: readonly (Found | null)[];
}

/** What of each shape tells how a place changes, and whether more of it is harder. */
const TELLING: Partial<Record<FeatureKind, { readonly size: string; readonly harder: 'more' | 'less' }>> = {
  rut: { size: 'depthM', harder: 'more' },
  hole: { size: 'depthM', harder: 'more' },
  ledge: { size: 'riseM', harder: 'more' },
  ditch: { size: 'depthM', harder: 'more' },
  hump: { size: 'heightM', harder: 'more' },
  log: { size: 'diameterM', harder: 'more' },
  rock: { size: 'heightM', harder: 'more' },
  water: { size: 'depthM', harder: 'more' },
  softPatch: { size: 'coneIndexPa', harder: 'less' },
};

/** Whether a larger value makes a place harder. */
export function isHarderWithMore(kind: FeatureKind): boolean {
  return TELLING[kind]?.harder !== 'less';
}

/** The hardest value of each telling size, visit by visit; `stretches` oldest first. Kinds nobody found are left out. */
export function conditionOf(stretches: readonly Stretch[]): Series[] {
  return (Object.keys(TELLING) as FeatureKind[]).flatMap((kind) => {
    const found = stretches.map((stretch) => hardest(stretch, kind));
    if (found.every((one) => one === null)) return [];
    return [{ kind, quantity: fieldOf(kind).quantity, found }];
  });
}

function fieldOf(kind: FeatureKind): NumberField {
  return (featureFields[kind] as Readonly<Record<string, NumberField>>)[TELLING[kind]?.size ?? ''];
}

function hardest({ features, hows }: Stretch, kind: FeatureKind): Found | null {
  const { size } = TELLING[kind] as { size: string };
  const { quantity } = fieldOf(kind);
  const all = features.flatMap((feature, i): Found[] => {
    const value = Math.abs((feature as unknown as Readonly<Record<string, number>>)[size]);
    if (feature.kind !== kind || Number.isNaN(value)) return [];
    const how = hows[`features.${i}.${size}`] ?? 'by eye';
    return [{ value, plusMinus: plusMinus(value, quantity, how), how }];
  });
  const sign = isHarderWithMore(kind) ? 1 : -1;
  return all.reduce<Found | null>(
    (worst, one) => (worst === null || sign * one.value > sign * worst.value ? one : worst),
    null,
  );
}

/** What a size did from one visit to another. */
export type Change = 'harder' | 'easier' | 'same';

/** A change counts when it is more than the ± of both together, as independent errors add: √(a² + b²). */
export function changeBetween(kind: FeatureKind, before: Found, after: Found): Change {
  const by = (after.value - before.value) * (isHarderWithMore(kind) ? 1 : -1);
  if (Math.abs(by) <= Math.hypot(before.plusMinus, after.plusMinus)) return 'same';
  return by > 0 ? 'harder' : 'easier';
}
