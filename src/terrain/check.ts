import { checkValues } from '../field.ts';
import type { Problem } from '../problem.ts';
import type { Feature } from './feature.ts';
import { featureFields } from './feature.ts';
import type { Obstacle, Plane, Stretch } from './obstacle.ts';
import { corridorFields, planeFields, stretchFields } from './obstacle.ts';
import { surfaceFields } from './surface.ts';

/** Values of an obstacle out of range, not known where they must be, and values that contradict each other. */
export function checkObstacle(obstacle: Obstacle, where: string): Problem[] {
  const problems = checkStretch(obstacle.stretch, `${where}.stretch`);
  obstacle.lines.forEach((line, i) => {
    if (line.kind === 'bypass') problems.push(...checkStretch(line.stretch, `${where}.lines[${i}].stretch`));
  });
  return problems;
}

export function checkStretch(stretch: Stretch, where: string): Problem[] {
  return [
    ...checkValues(stretchFields, stretch, where),
    ...checkPlane(stretch.plane, `${where}.plane`),
    ...checkValues(surfaceFields, stretch.surface, `${where}.surface`),
    ...checkValues(corridorFields, stretch.corridor, `${where}.corridor`),
    ...stretch.features.flatMap((feature, i) => checkFeature(feature, `${where}.features[${i}]`)),
  ];
}

/** Slope and camber may be null, not known. */
export function checkPlane(plane: Plane, where: string): Problem[] {
  const known = Object.entries(planeFields).filter(([name]) => plane[name as keyof Plane] !== null);
  return checkValues(Object.fromEntries(known), plane, where);
}

export function checkFeature(feature: Feature, where: string): Problem[] {
  return [...checkValues(featureFields[feature.kind], feature, where), ...contradictions(feature, where)];
}

/** A shape that ends before it starts would vanish from the ground without a word. */
export function contradictions(feature: Feature, where: string): Problem[] {
  const ends =
    'fromM' in feature
      ? { name: 'toM', ok: feature.toM > feature.fromM, what: 'It ends before it starts.' }
      : 'fromYM' in feature
        ? {
            name: 'toYM',
            ok: feature.toYM > feature.fromYM,
            what: 'Its left end lies right of its right end.',
          }
        : null;
  if (ends === null || ends.ok) return [];
  return [
    {
      severity: 'error',
      where: `${where}.${ends.name}`,
      what: ends.what,
      done: 'Exchange the two, or measure them again.',
      times: 1,
    },
  ];
}
