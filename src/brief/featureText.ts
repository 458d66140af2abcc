import type { Feature, FeatureKind } from '../terrain/feature.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';

export function featureName(kind: FeatureKind): string {
  return kind === 'softPatch' ? 'soft patch' : kind;
}

/** A shape in a few words: `Rut, left, 30 cm deep`. */
export function featureWords(feature: Feature, system: System): string {
  const size = (valueM: number) => shown(Math.abs(valueM), 'size', system);
  const name = featureName(feature.kind);
  const words = [name.slice(0, 1).toUpperCase() + name.slice(1), sideOf(feature)];
  switch (feature.kind) {
    case 'rut':
    case 'hole':
    case 'ditch':
    case 'water':
      words.push(`${size(feature.depthM)} deep`);
      break;
    case 'ledge':
      words.push(`${size(feature.riseM)} ${feature.riseM < 0 ? 'down' : 'up'}`);
      break;
    case 'hump':
    case 'rock':
      words.push(`${size(feature.heightM)} high`);
      break;
    case 'log':
      words.push(`${size(feature.diameterM)} thick`);
      break;
    case 'bank':
      words.push(`${size(feature.heightM)} ${feature.heightM < 0 ? 'down' : 'up'}`);
      break;
    case 'softPatch':
      words.push(feature.wetness);
      break;
  }
  return words.filter(Boolean).join(', ');
}

/** Such as `left`; empty for what lies on the main line or right across it. */
export function sideOf(feature: Feature): string {
  if (feature.kind === 'bank') return feature.side;
  const y = feature.kind === 'rut' ? feature.centreYM : 'yM' in feature ? feature.yM : 0;
  return y === 0 ? '' : y > 0 ? 'left' : 'right';
}
