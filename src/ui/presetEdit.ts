import { same } from '../archive/same.ts';
import type { How } from '../terrain/measure.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { Answers, Preset } from '../terrain/preset.ts';
import { stretchFrom } from '../terrain/preset.ts';
import type { Path } from './groundEdit.ts';
import { withValue } from './groundEdit.ts';

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

/** Slope and camber lie in the plane, whatever its shapes; every other answer lays shapes. */
export function isOfPlane(key: string): boolean {
  return key === 'slopeRad' || key === 'camberRad';
}

/** The stretch once the question `key` was answered, or its answer taken back: slope and camber are then not known from here. */
export function withAnswer(stretch: Stretch, preset: Preset, given: Answered, key: string): Stretch {
  if (isOfPlane(key)) return withValue(stretch, `plane.${key}`, given.answers[key] ?? null, given.hows[key]);
  return answeredStretch(stretch, preset, given);
}

/**
 * The stretch with the shapes that the answers lay, and the length where it is asked for. Everything else stays as it is:
 * slope and camber, surface, corridor.
 */
export function answeredStretch(stretch: Stretch, preset: Preset, given: Answered): Stretch {
  const made = stretchFrom(preset, given.answers);
  const asksLength = preset.questions.some(({ key }) => key === 'lengthM');
  const isLaid = (path: Path) => path.startsWith('features.') || (asksLength && path === 'lengthM');
  const hows: Record<string, How> = {};
  for (const [path, how] of Object.entries(stretch.hows)) if (!isLaid(path)) hows[path] = how;
  for (const key of Object.keys(given.answers))
    for (const path of movedBy(preset, given.answers, key))
      if (isLaid(path)) hows[path] = given.hows[key] ?? 'by eye';
  return {
    ...stretch,
    lengthM: asksLength ? made.lengthM : stretch.lengthM,
    features: made.features,
    hows,
  };
}

/**
 * The answers, of those given one after another, that lay the shapes just as they are, with slope and camber as the
 * stretch has them; the latest of those that do. Null where none do: somebody changed the shapes otherwise.
 */
export function answersOf(stretch: Stretch, preset: Preset, given: readonly Answered[]): Answered | null {
  const found = given.findLast((one) => {
    const laid = answeredStretch(stretch, preset, one);
    return (
      same(laid.features, stretch.features) &&
      laid.lengthM === stretch.lengthM &&
      same(measured(laid), measured(stretch))
    );
  });
  return found === undefined ? null : withPlane(found, stretch);
}

/** How its values were got, without those judged by eye: one that is absent was, too. */
function measured({ hows }: Stretch): Readonly<Record<string, How>> {
  return Object.fromEntries(Object.entries(hows).filter(([, how]) => how !== 'by eye'));
}

/** The answers with slope and camber as the stretch has them: they are also read otherwise, and undone. */
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
