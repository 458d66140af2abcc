import type { NumberField } from '../field.ts';
import { number } from '../field.ts';
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
import type { Words } from '../words/words.ts';
import { say } from '../words/words.ts';

/** One number that the leader reads off a tape or an inclinometer. */
export interface PresetQuestion {
  readonly key: string;
  readonly field: NumberField;
  readonly start: number;
}

export type Answers = Readonly<Record<string, number>>;

/** What a preset is called in code and files. */
export type PresetName = keyof Words['preset'];

/** A kind of obstacle with at most six questions; everything else starts from a visible default. */
export interface Preset {
  /** As obstacles keep it; `say.preset` shows it. */
  readonly name: PresetName;
  readonly sentence: string;
  readonly questions: readonly PresetQuestion[];
  readonly surface: Surface;
  /** Shapes that the answers describe, in the obstacle frame. */
  readonly features: (answers: Answers, lengthM: number) => Feature[];
}

/** A preset may call a number otherwise than its shape does; faults name it by what is asked. */
function ask(key: string, field: NumberField, start: number, label = field.label): PresetQuestion {
  return { key, field: { ...field, label }, start };
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
    sentence: say.presets.sentence['rutted climb'],
    questions: [
      slope(rad(14)),
      length(18),
      ask('leftDepthM', rutFields.depthM, 0.3, say.presets.leftDepth),
      ask('rightDepthM', rutFields.depthM, 0.25, say.presets.rightDepth),
      ask('rutWidthM', rutFields.widthM, 0.45, say.presets.rutWidth),
      ask('spacingM', number(say.presets.rutsApart, 'length', 0.6, 3), 1.55),
    ],
    surface: { material: 'earth', condition: 'dry' },
    features: rutPair,
  },
  {
    name: 'cross-axle holes',
    sentence: say.presets.sentence['cross-axle holes'],
    questions: [
      slope(rad(8)),
      length(12),
      ask('depthM', holeFields.depthM, 0.4, say.presets.holeDepth),
      ask('holeLengthM', holeFields.lengthM, 2, say.presets.holeLength),
      ask('apartM', number(say.presets.holesApart, 'length', 0.5, 8), 2.7),
    ],
    surface: { material: 'earth', condition: 'dry' },
    features: alternateHoles,
  },
  {
    name: 'ledge',
    sentence: say.presets.sentence.ledge,
    questions: [
      slope(rad(6)),
      ask('riseM', ledgeFields.riseM, 0.3),
      ask('faceRad', ledgeFields.faceRad, rad(75)),
      ask('skewRad', ledgeFields.skewRad, 0),
    ],
    surface: { material: 'rock', condition: 'dry' },
    features: (a) => [{ kind: 'ledge', xM: 0, riseM: a.riseM, faceRad: a.faceRad, skewRad: a.skewRad }],
  },
  {
    name: 'ditch',
    sentence: say.presets.sentence.ditch,
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
    sentence: say.presets.sentence['side slope'],
    questions: [slope(rad(3)), { ...camber, start: rad(14) }, length(25)],
    surface: { material: 'gravel', condition: 'dry' },
    features: () => [],
  },
  {
    name: 'ford',
    sentence: say.presets.sentence.ford,
    questions: [ask('depthM', waterFields.depthM, 0.4), ask('flowMps', waterFields.flowMps, 0.5), length(12)],
    surface: { material: 'gravel', condition: 'wet' },
    features: (a, lengthM) => [
      { kind: 'water', fromM: -lengthM / 2 + 1, toM: lengthM / 2 - 1, depthM: a.depthM, flowMps: a.flowMps },
    ],
  },
  {
    name: 'rocks',
    sentence: say.presets.sentence.rocks,
    questions: [
      slope(rad(5)),
      ask('heightM', rockFields.heightM, 0.25, say.presets.tallestRock),
      ask('secondM', rockFields.heightM, 0.2, say.presets.secondRock),
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
    sentence: say.presets.sentence.log,
    questions: [slope(0), ask('diameterM', logFields.diameterM, 0.3), ask('skewRad', logFields.skewRad, 0)],
    surface: { material: 'earth', condition: 'dry' },
    features: (a) => [
      { kind: 'log', xM: 0, diameterM: a.diameterM, skewRad: a.skewRad, fromYM: -4, toYM: 4 },
    ],
  },
  {
    name: 'soft ground',
    sentence: say.presets.sentence['soft ground'],
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

/** What an obstacle's preset is called for a person; one that there is no longer keeps the name that it was given. */
export function presetText(name: string): string {
  const preset = presetNamed(name);
  return preset === undefined ? name : say.preset[preset.name];
}
