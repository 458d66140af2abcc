import type { Feature } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { Season } from './classification.ts';
import { RAINED_ON } from './criteria.ts';

/**
 * The ground that a grade looks at: dry, as it was entered, never drier than that; wet, the same and also with everything
 * wet that rain can wet, the harder of which counts: wet sand carries better than dry.
 */
export function groundsIn(season: Season, stretch: Stretch): Stretch[] {
  if (season === 'dry' || isWet(stretch)) return [stretch];
  const surface = { ...stretch.surface, condition: RAINED_ON };
  return [stretch, { ...stretch, surface, features: stretch.features.map(rainedOn) }];
}

function isWet({ surface, features }: Stretch): boolean {
  return surface.condition === RAINED_ON && features.every((feature) => rainedOn(feature) === feature);
}

function rainedOn(feature: Feature): Feature {
  if (feature.kind !== 'softPatch' || feature.wetness === RAINED_ON) return feature;
  return { ...feature, wetness: RAINED_ON };
}

/** What rain does that nobody can reckon from a dry measurement: how high water rises, how soft ground becomes. */
export function rainHides({ features }: Stretch): ('water' | 'soft ground')[] {
  const has = (test: (feature: Feature) => boolean) => features.some(test);
  return [
    ...(has(({ kind }) => kind === 'water') ? (['water'] as const) : []),
    ...(has((feature) => rainedOn(feature) !== feature) ? (['soft ground'] as const) : []),
  ];
}
