import type { Feature, FeatureKind } from '../terrain/feature.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import { say } from '../words/words.ts';

export function featureName(kind: FeatureKind): string {
  return say.feature[kind];
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
      words.push(say.ground.deep(size(feature.depthM)));
      break;
    case 'ledge':
      words.push(say.ground[feature.riseM < 0 ? 'down' : 'up'](size(feature.riseM)));
      break;
    case 'hump':
    case 'rock':
      words.push(say.ground.high(size(feature.heightM)));
      break;
    case 'log':
      words.push(say.ground.thick(size(feature.diameterM)));
      break;
    case 'bank':
      words.push(say.ground[feature.heightM < 0 ? 'down' : 'up'](size(feature.heightM)));
      break;
    case 'softPatch':
      words.push(say.choice[feature.wetness]);
      break;
  }
  return words.filter(Boolean).join(', ');
}

/** Such as `left`; empty for what lies on the main line or right across it. */
export function sideOf(feature: Feature): string {
  if (feature.kind === 'bank') return say.choice[feature.side];
  const y = feature.kind === 'rut' ? feature.centreYM : 'yM' in feature ? feature.yM : 0;
  return y === 0 ? '' : say.choice[y > 0 ? 'left' : 'right'];
}
