import type { Feature } from './feature.ts';
import type { Stretch } from './obstacle.ts';
import type { Surface } from './surface.ts';

/**
 * How the ruts of a surface deepen: after n passes z_n = z_1 n^(1/a), a 2 to 3 in loose ground, 3 to 4 in medium, 4 to 5
 * in dense (multipass sinkage after Scholander and Abebe; from memory). The low end of each is taken. Null: ground that
 * a day's convoy does not wear.
 */
function wearExponent({ material, condition }: Surface): number | null {
  switch (material) {
    case 'mud':
    case 'sand':
    case 'snow':
      return 2;
    case 'earth':
    case 'clay':
    case 'grass':
      return condition === 'wet' ? 2 : 4;
    case 'gravel':
      return condition === 'wet' ? 3 : 4;
    case 'rock':
    case 'ice':
    case 'asphalt':
    case 'concrete':
      return null;
  }
}

/** Whether vehicles leave this ground different for the next one. */
export function wears(stretch: Stretch): boolean {
  if (softens(stretch)) return true;
  return wearExponent(stretch.surface) !== null && stretch.features.some((feature) => feature.kind === 'rut');
}

/**
 * The stretch as `passes` vehicles leave it: ruts deepen in one another's tracks, soft patches have borne so many more.
 * What was measured counts as the first pass, so one pass more is the second. Holes and ledges are left as they are.
 */
export function afterPasses(stretch: Stretch, passes: number): Stretch {
  const a = wearExponent(stretch.surface);
  if (passes === 0 || !wears(stretch)) return stretch;
  const worn = (feature: Feature): Feature =>
    feature.kind === 'rut' && a !== null
      ? { ...feature, depthM: feature.depthM * (passes + 1) ** (1 / a) }
      : feature;
  return softened({ ...stretch, features: stretch.features.map(worn) }, passes);
}

/** Whether each vehicle finds soft patches that have borne more. */
export function softens({ features }: Stretch): boolean {
  return features.some(({ kind }) => kind === 'softPatch');
}

/** The stretch with soft patches that have borne so many passes more; its ruts are as they were measured. */
export function softened(stretch: Stretch, passes: number): Stretch {
  if (passes === 0 || !softens(stretch)) return stretch;
  const borne = (feature: Feature): Feature =>
    feature.kind === 'softPatch' ? { ...feature, passesBefore: feature.passesBefore + passes } : feature;
  return { ...stretch, features: stretch.features.map(borne) };
}
