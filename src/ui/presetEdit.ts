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
 * The answers after slope, camber or length was changed by another way: read by the phone, or taken from the elevation
 * model. An answer left as it was would put the former value back with the next one given.
 */
export function agreeing(given: Answered, before: Stretch, after: Stretch): Answered {
  const values = [
    ['slopeRad', 'plane.slopeRad', before.plane.slopeRad, after.plane.slopeRad],
    ['camberRad', 'plane.camberRad', before.plane.camberRad, after.plane.camberRad],
    ['lengthM', 'lengthM', before.lengthM, after.lengthM],
  ] as const;
  return values
    .filter(([, , old, now]) => old !== now)
    .reduce((so, [key, path, , now]) => answer(so, key, now, after.hows[path] ?? 'by eye'), given);
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
