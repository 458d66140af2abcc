import type { How } from '../terrain/measure.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { Answers, Preset } from '../terrain/preset.ts';
import { stretchFrom } from '../terrain/preset.ts';
import type { Path } from './groundEdit.ts';

/** What the leader answered to a preset's questions, and how each answer was got. */
export interface Answered {
  readonly answers: Answers;
  readonly hows: Readonly<Record<string, How>>;
}

export const NOTHING_ANSWERED: Answered = { answers: {}, hows: {} };

/** The stretch once a question was answered, or its answer taken back: slope and camber are then not known from here. */
export function withAnswer(
  stretch: Stretch,
  preset: Preset,
  given: Answered,
  key: string,
  value: number | null,
): Stretch {
  const plane = key in stretch.plane ? { ...stretch.plane, [key]: value } : stretch.plane;
  return answeredStretch({ ...stretch, plane }, preset, given);
}

/** With one more answer; null takes it back. */
export function answer(given: Answered, key: string, value: number | null, how: How): Answered {
  const answers: Record<string, number> = { ...given.answers };
  if (value === null) delete answers[key];
  else answers[key] = value;
  return { answers, hows: { ...given.hows, [key]: how } };
}

/**
 * The stretch with the shapes that the answers describe. What no question asks (surface, corridor) stays as it is, and
 * so does what the leader has not answered of slope and camber.
 */
export function answeredStretch(stretch: Stretch, preset: Preset, given: Answered): Stretch {
  const made = stretchFrom(preset, given.answers);
  const hows: Record<string, How> = {};
  for (const [path, how] of Object.entries(stretch.hows)) if (!path.startsWith('features.')) hows[path] = how;
  for (const key of Object.keys(given.answers))
    for (const path of movedBy(preset, given.answers, key)) hows[path] = given.hows[key] ?? 'by eye';
  return {
    ...stretch,
    lengthM: made.lengthM,
    features: made.features,
    plane: {
      slopeRad: given.answers.slopeRad ?? stretch.plane.slopeRad,
      camberRad: given.answers.camberRad ?? stretch.plane.camberRad,
    },
    hows,
  };
}

/**
 * The answers with slope and camber as the stretch has them: they are also read by the phone, taken from the elevation
 * model, and undone. An answer left as it was would put the former value back with the next one given.
 */
export function withPlane({ answers, hows }: Answered, { plane, hows: by }: Stretch): Answered {
  const now: Record<string, number> = { ...answers };
  const got: Record<string, How> = { ...hows };
  for (const key of ['slopeRad', 'camberRad'] as const) {
    const value = plane[key];
    if (value === null) delete now[key];
    else now[key] = value;
    got[key] = by[`plane.${key}`] ?? 'by eye';
  }
  return { answers: now, hows: got };
}

/** The values of a preset's stretch that an answer decides, found by answering otherwise. */
export function movedBy(preset: Preset, answers: Answers, key: string): Path[] {
  const question = preset.questions.find((asked) => asked.key === key);
  if (question === undefined || question.field.kind !== 'number') return [];
  const { min, max } = question.field;
  const value = answers[key] ?? question.start;
  const other = value < (min + max) / 2 ? value + (max - value) / 8 : value - (value - min) / 8;
  return differing(
    stretchFrom(preset, { ...answers, [key]: value }),
    stretchFrom(preset, { ...answers, [key]: other }),
  );
}

function differing(a: unknown, b: unknown, path: Path = ''): Path[] {
  if (typeof a !== 'object' || a === null || typeof b !== 'object' || b === null)
    return Object.is(a, b) ? [] : [path];
  const one = a as Readonly<Record<string, unknown>>;
  const two = b as Readonly<Record<string, unknown>>;
  return Object.keys(one)
    .filter((name) => name in two && !(path === '' && name === 'hows'))
    .flatMap((name) => differing(one[name], two[name], path === '' ? name : `${path}.${name}`));
}
