import type { Feature, FeatureKind } from '../terrain/feature.ts';
import type { How, Hows } from '../terrain/measure.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import { rad } from '../units.ts';

/** Where a value lies in a stretch, as in its `hows`: `plane.slopeRad`, `features.0.depthM`, `lengthM`. */
export type Path = string;

/** The stretch with one value replaced and, where given, how it was got. */
export function withValue(stretch: Stretch, path: Path, value: unknown, how?: How): Stretch {
  const changed = replaced(stretch, path.split('.'), value) as Stretch;
  return how === undefined ? changed : { ...changed, hows: { ...changed.hows, [path]: how } };
}

export function withHow(stretch: Stretch, path: Path, how: How): Stretch {
  return { ...stretch, hows: { ...stretch.hows, [path]: how } };
}

/** The same stretch, made as if each of its shapes' sizes had been replaced. */
export function remade(stretch: Stretch): Stretch {
  return valuesIn(stretch).reduce(
    (before, [path, value]) => withValue(before, path, value, before.hows[path]),
    stretch,
  );
}

/** The same with one of its shapes' sizes, another for each `n`, moved a little as by a hand. */
export function movedALittle(stretch: Stretch, n: number): Stretch {
  const sizes = valuesIn(stretch).filter((entry): entry is [Path, number] => typeof entry[1] === 'number');
  if (sizes.length === 0) return stretch;
  const [path, size] = sizes[n % sizes.length];
  return withValue(stretch, path, size * (1 + 0.1 * Math.sin(n)), 'by eye');
}

/** What its shapes say, each at its path. */
function valuesIn({ features }: Stretch): [Path, unknown][] {
  return features.flatMap((feature, i) =>
    Object.entries(feature).map(([name, value]): [Path, unknown] => [`features.${i}.${name}`, value]),
  );
}

function replaced(record: unknown, [name, ...rest]: readonly string[], value: unknown): unknown {
  if (name === undefined) return value;
  if (Array.isArray(record))
    return record.map((item: unknown, i) => (String(i) === name ? replaced(item, rest, value) : item));
  const object = record as Readonly<Record<string, unknown>>;
  return { ...object, [name]: replaced(object[name], rest, value) };
}

/** A shape to start from, at the pin; its sizes are guesses and count as judged by eye. */
export function freshFeature(kind: FeatureKind, lengthM: number): Feature {
  const fromM = -lengthM / 2;
  const toM = lengthM / 2;
  switch (kind) {
    case 'rut':
      return { kind, centreYM: 0.75, widthM: 0.4, depthM: 0.2, fromM, toM, runM: 1, section: 'U' };
    case 'hole':
      return { kind, xM: 0, yM: 0.75, lengthM: 1.5, widthM: 0.9, depthM: 0.3 };
    case 'ledge':
      return { kind, xM: 0, riseM: 0.25, faceRad: rad(75), skewRad: 0 };
    case 'ditch':
      return { kind, xM: 0, widthM: 1.5, depthM: 0.3, skewRad: 0 };
    case 'hump':
      return { kind, xM: 0, lengthM: 2, heightM: 0.4, skewRad: 0 };
    case 'log':
      return { kind, xM: 0, diameterM: 0.3, skewRad: 0, fromYM: -4, toYM: 4 };
    case 'rock':
      return { kind, xM: 0, yM: 0.75, heightM: 0.2, lengthM: 0.7, widthM: 0.6 };
    case 'bank':
      return { kind, side: 'left', distanceM: 1.5, angleRad: rad(60), heightM: 1.5 };
    case 'water':
      return { kind, fromM, toM, depthM: 0.3, flowMps: 0.3 };
    case 'softPatch':
      return { kind, fromM, toM, coneIndexPa: 300e3, passesBefore: 0, wetness: 'moist' };
  }
}

export function addFeature(stretch: Stretch, kind: FeatureKind): Stretch {
  return { ...stretch, features: [...stretch.features, freshFeature(kind, stretch.lengthM)] };
}

/** Without one shape; what is known of the others' values stays with them. */
export function removeFeature(stretch: Stretch, index: number): Stretch {
  return {
    ...stretch,
    features: stretch.features.filter((_, i) => i !== index),
    hows: howsWithout(stretch.hows, index),
  };
}

function howsWithout(hows: Hows, index: number): Hows {
  const kept: Record<string, How> = {};
  for (const [path, how] of Object.entries(hows)) {
    const [list, at, ...rest] = path.split('.');
    if (list !== 'features') kept[path] = how;
    else if (Number(at) < index) kept[path] = how;
    else if (Number(at) > index) kept[[list, Number(at) - 1, ...rest].join('.')] = how;
  }
  return kept;
}
