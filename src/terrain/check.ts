import { checkValues } from '../field.ts';
import type { Problem } from '../problem.ts';
import type { Feature } from './feature.ts';
import { featureFields } from './feature.ts';
import type { Obstacle, Plane, Stretch } from './obstacle.ts';
import { corridorFields, planeFields, stretchFields } from './obstacle.ts';
import { rad } from '../units.ts';
import { surfaceFields } from './surface.ts';
import { say } from '../words/words.ts';

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
    ...stretchContradictions(stretch, where),
  ];
}

/** Slope and camber may be null, not known. */
export function checkPlane(plane: Plane, where: string): Problem[] {
  const known = Object.entries(planeFields).filter(([name]) => plane[name as keyof Plane] !== null);
  return checkValues(Object.fromEntries(known), plane, where);
}

export function checkFeature(feature: Feature, where: string): Problem[] {
  return [
    ...checkValues(featureFields[feature.kind], feature, where),
    ...contradictions(feature, where),
    ...tooDeep(feature, where),
  ];
}

/** A shape that ends before it starts would vanish from the ground without a word. */
export function contradictions(feature: Feature, where: string): Problem[] {
  const problems: Problem[] = [];
  const add = (name: string, what: string, done: string) =>
    problems.push({ severity: 'error', where: `${where}.${name}`, what, done, times: 1 });
  if ('fromM' in feature && feature.toM <= feature.fromM)
    add('toM', say.groundChecks.endsFirst, say.groundChecks.exchange);
  if ('fromYM' in feature && feature.toYM <= feature.fromYM)
    add('toYM', say.groundChecks.leftEndRight, say.groundChecks.exchange);
  return problems;
}

/** Steepest side that loose or worn ground keeps; beyond it a cut that deep must be wider. */
const STEEPEST_SIDE_RAD = rad(80);

/** A cut deeper than its own sides allow. */
function tooDeep(feature: Feature, where: string): Problem[] {
  const side = sideOf(feature);
  if (side === null || Math.atan2(side.depthM, side.runM) <= STEEPEST_SIDE_RAD) return [];
  const what = say.groundChecks.tooDeep;
  return [{ severity: 'error', where: `${where}.depthM`, what, done: side.done, times: 1 }];
}

/** Depth and horizontal run of the side of a cut, as its height field draws it. */
function sideOf(feature: Feature): { depthM: number; runM: number; done: string } | null {
  switch (feature.kind) {
    case 'rut':
      return {
        depthM: feature.depthM,
        runM: feature.widthM * (feature.section === 'U' ? 0.25 : 0.5),
        done: say.groundChecks.measureRut,
      };
    case 'ditch':
      return {
        depthM: feature.depthM,
        runM: feature.widthM * 0.25,
        done: say.groundChecks.measureDitch,
      };
    case 'hole':
      return {
        depthM: feature.depthM,
        runM: Math.min(feature.lengthM, feature.widthM) / 4,
        done: say.groundChecks.measureHole,
      };
    default:
      return null;
  }
}

/** Values of a stretch that are each possible but not together: shapes outside the corridor or beyond its ends. */
function stretchContradictions(stretch: Stretch, where: string): Problem[] {
  const problems: Problem[] = [];
  const { leftM, rightM } = stretch.corridor;
  const end = stretch.lengthM / 2;
  stretch.features.forEach((feature, i) => {
    const add = (name: string, what: string, done: string) =>
      problems.push({ severity: 'error', where: `${where}.features[${i}].${name}`, what, done, times: 1 });
    if (feature.kind === 'rut' || feature.kind === 'hole') {
      const yM = feature.kind === 'rut' ? feature.centreYM : feature.yM;
      const name = feature.kind === 'rut' ? 'centreYM' : 'yM';
      if (yM - feature.widthM / 2 < -rightM || yM + feature.widthM / 2 > leftM)
        add(name, say.groundChecks.beyondRoom[feature.kind], say.groundChecks.measureRoom);
    }
    if ('xM' in feature && Math.abs(feature.xM) > end)
      add('xM', say.groundChecks.beyondEnds, say.groundChecks.makeLonger);
    if ('fromM' in feature && (feature.fromM >= end || feature.toM <= -end))
      add('fromM', say.groundChecks.beyondEnds, say.groundChecks.makeLonger);
  });
  return problems;
}
