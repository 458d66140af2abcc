import type { Field } from '../field.ts';
import { rad } from '../units.ts';
import { ditchFields } from './ditch.ts';
import type { Feature } from './feature.ts';
import { holeFields } from './hole.ts';
import { ledgeFields } from './ledge.ts';
import { logFields } from './log.ts';
import type { Corridor, Stretch } from './obstacle.ts';
import { planeFields, stretchFields } from './obstacle.ts';
import { rockFields } from './rock.ts';
import { rutFields } from './rut.ts';
import type { How } from './measure.ts';
import type { Surface } from './surface.ts';
import { softPatchFields } from './softPatch.ts';
import { waterFields } from './water.ts';

/** One number that the leader reads off a tape or an inclinometer. */
export interface PresetQuestion {
  readonly key: string;
  readonly label: string;
  readonly field: Field;
  readonly start: number;
}

export type Answers = Readonly<Record<string, number>>;

/** A kind of obstacle with at most six questions; everything else starts from a visible default. */
export interface Preset {
  readonly name: string;
  readonly sentence: string;
  readonly questions: readonly PresetQuestion[];
  readonly surface: Surface;
  /** Shapes that the answers describe, in the obstacle frame. */
  readonly features: (answers: Answers, lengthM: number) => Feature[];
}

function ask(key: string, field: Field, start: number, label = field.label): PresetQuestion {
  return { key, label, field, start };
}

const slope = (start: number) => ask('slopeRad', planeFields.slopeRad, start);
const camber = ask('camberRad', planeFields.camberRad, 0);
const length = (start: number) => ask('lengthM', stretchFields.lengthM, start);

function rutPair(a: Answers, lengthM: number): Feature[] {
  const rut = (centreYM: number, depthM: number): Feature => ({
    kind: 'rut',
    centreYM,
    widthM: a.rutWidthM,
    depthM,
    fromM: -lengthM / 2,
    toM: lengthM / 2,
    runM: 1.5,
    section: 'U',
  });
  return [rut(a.spacingM / 2, a.leftDepthM), rut(-a.spacingM / 2, a.rightDepthM)];
}

/** Holes on alternate sides, `apartM` from middle to middle: near a wheelbase apart they lift diagonal wheels. */
function alternateHoles(a: Answers, lengthM: number): Feature[] {
  const count = Math.max(2, Math.floor((lengthM - a.holeLengthM) / a.apartM) + 1);
  const first = -((count - 1) * a.apartM) / 2;
  return Array.from({ length: count }, (_, i) => ({
    kind: 'hole',
    xM: first + i * a.apartM,
    yM: i % 2 === 0 ? 0.78 : -0.78,
    lengthM: a.holeLengthM,
    widthM: 0.9,
    depthM: a.depthM,
  }));
}

export const PRESETS: readonly Preset[] = [
  {
    name: 'rutted climb',
    sentence: 'Two ruts on a slope, each with its own depth.',
    questions: [
      slope(rad(14)),
      length(18),
      ask('leftDepthM', rutFields.depthM, 0.3, 'Left rut depth'),
      ask('rightDepthM', rutFields.depthM, 0.25, 'Right rut depth'),
      ask('rutWidthM', rutFields.widthM, 0.45, 'Rut width'),
      ask('spacingM', { ...rutFields.centreYM, min: 0.6, max: 3 }, 1.55, 'Ruts apart, middle to middle'),
    ],
    surface: { material: 'earth', condition: 'dry' },
    features: rutPair,
  },
  {
    name: 'cross-axle holes',
    sentence: 'Holes on alternate sides about a wheelbase apart: they lift diagonal wheels.',
    questions: [
      slope(rad(8)),
      length(12),
      ask('depthM', holeFields.depthM, 0.4, 'Hole depth'),
      ask('holeLengthM', holeFields.lengthM, 2, 'Hole length'),
      ask('apartM', { ...holeFields.lengthM, min: 0.5, max: 8 }, 2.7, 'Holes apart, middle to middle'),
    ],
    surface: { material: 'earth', condition: 'dry' },
    features: alternateHoles,
  },
  {
    name: 'ledge',
    sentence: 'A step up or down across the whole line.',
    questions: [
      slope(rad(6)),
      ask('riseM', ledgeFields.riseM, 0.3, 'Rise, a drop is negative'),
      ask('faceRad', ledgeFields.faceRad, rad(75)),
      ask('skewRad', ledgeFields.skewRad, 0),
    ],
    surface: { material: 'rock', condition: 'dry' },
    features: (a) => [{ kind: 'ledge', xM: 0, riseM: a.riseM, faceRad: a.faceRad, skewRad: a.skewRad }],
  },
  {
    name: 'ditch',
    sentence: 'A trench across the line.',
    questions: [
      slope(0),
      ask('widthM', ditchFields.widthM, 2.2),
      ask('depthM', ditchFields.depthM, 0.45),
      ask('skewRad', ditchFields.skewRad, 0),
    ],
    surface: { material: 'earth', condition: 'dry' },
    features: (a) => [{ kind: 'ditch', xM: 0, widthM: a.widthM, depthM: a.depthM, skewRad: a.skewRad }],
  },
  {
    name: 'side slope',
    sentence: 'A stretch that leans.',
    questions: [slope(rad(3)), { ...camber, start: rad(14) }, length(25)],
    surface: { material: 'gravel', condition: 'dry' },
    features: () => [],
  },
  {
    name: 'ford',
    sentence: 'Water over the line; walk it only where that is safe.',
    questions: [ask('depthM', waterFields.depthM, 0.4), ask('flowMps', waterFields.flowMps, 0.5), length(12)],
    surface: { material: 'gravel', condition: 'wet' },
    features: (a, lengthM) => [
      { kind: 'water', fromM: -lengthM / 2 + 1, toM: lengthM / 2 - 1, depthM: a.depthM, flowMps: a.flowMps },
    ],
  },
  {
    name: 'rocks',
    sentence: 'Rocks that do not move, one under each wheel path.',
    questions: [
      slope(rad(5)),
      ask('heightM', rockFields.heightM, 0.25, 'Tallest rock'),
      ask('secondM', rockFields.heightM, 0.2, 'Second rock'),
      length(10),
    ],
    surface: { material: 'rock', condition: 'dry' },
    features: (a) => [
      { kind: 'rock', xM: -1.4, yM: 0.75, heightM: a.heightM, lengthM: 0.9, widthM: 0.7 },
      { kind: 'rock', xM: 1.4, yM: -0.75, heightM: a.secondM, lengthM: 0.9, widthM: 0.7 },
    ],
  },
  {
    name: 'log',
    sentence: 'A log across the line that stays where it is.',
    questions: [slope(0), ask('diameterM', logFields.diameterM, 0.3), ask('skewRad', logFields.skewRad, 0)],
    surface: { material: 'earth', condition: 'dry' },
    features: (a) => [
      { kind: 'log', xM: 0, diameterM: a.diameterM, skewRad: a.skewRad, fromYM: -4, toYM: 4 },
    ],
  },
  {
    name: 'soft ground',
    sentence: 'Mud, sand or bog that gives way under a wheel.',
    questions: [slope(0), length(20), ask('coneIndexPa', softPatchFields.coneIndexPa, 300e3)],
    surface: { material: 'earth', condition: 'wet' },
    features: (a, lengthM) => [
      {
        kind: 'softPatch',
        fromM: -lengthM / 2,
        toM: lengthM / 2,
        coneIndexPa: a.coneIndexPa,
        passesBefore: 0,
        wetness: 'wet',
      },
    ],
  },
];

const CORRIDOR: Corridor = {
  leftM: 1.6,
  leftBound: 'bank',
  rightM: 1.6,
  rightBound: 'bank',
  headroomM: 4,
};

/**
 * The ground that a preset's answers describe, all of them got in the same way. A question that was not answered takes
 * its start; slope stays unknown until it is answered. Camber that was not asked for is level by eye.
 */
export function stretchFrom(preset: Preset, given: Answers = {}, how: How = 'taped'): Stretch {
  const starts = Object.fromEntries(preset.questions.map(({ key, start }) => [key, start]));
  const answers: Answers = { ...starts, ...given };
  const lengthM = answers.lengthM ?? 8;
  const features = preset.features(answers, lengthM);
  const hows: Record<string, How> = {};
  for (const name of ['slopeRad', 'camberRad']) if (name in given) hows[`plane.${name}`] = how;
  features.forEach((feature, i) => {
    for (const [size, value] of Object.entries(feature))
      if (typeof value === 'number') hows[`features.${i}.${size}`] = how;
  });
  return {
    lengthM,
    plane: { slopeRad: given.slopeRad ?? null, camberRad: answers.camberRad ?? 0 },
    surface: preset.surface,
    corridor: CORRIDOR,
    features,
    hows,
  };
}

export function presetNamed(name: string): Preset | undefined {
  return PRESETS.find((preset) => preset.name === name);
}
