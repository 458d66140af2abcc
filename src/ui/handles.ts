import { offsetFields } from '../archive/fields.ts';
import { featureName, sideOf } from '../brief/featureText.ts';
import type { Point } from '../draw/ink.ts';
import type { SizeMark } from '../draw/sizes.ts';
import { movePerUnit, valueNear } from '../draw/sizes.ts';
import type { NumberField } from '../field.ts';
import type { Feature } from '../terrain/feature.ts';
import type { System } from '../units.ts';
import { fromShown, rad } from '../units.ts';
import { say } from '../words/words.ts';

/** A size that can be taken hold of in a drawing. */
export interface Handle {
  readonly id: string;
  /** Index of its feature, or null for the line's offset. */
  readonly feature: number | null;
  readonly label: string;
  /** Where the value lies in the stretch as recorded; null for the line's offset. */
  readonly path: string | null;
  /** Its range is narrowed where another size of the shape bounds it. */
  readonly field: NumberField;
  /** As recorded. */
  readonly value: number;
  /** Where it would lie with another value. */
  readonly placeOf: (value: number) => Point;
  /** Where its hold extends to from its place, so that neighbours do not cover each other. */
  readonly towards: 'up' | 'down' | 'left' | 'right' | 'about';
}

/** One press of an arrow key: the finest that a tape or an inclinometer reads on rough ground. */
export function stepOf(field: NumberField, system: System): number {
  if (field.quantity === 'angle') return rad(1);
  if (system === 'metric') return 0.01;
  return field.quantity === 'length' ? fromShown(0.05, 'length', system) : fromShown(0.5, 'size', system);
}

/** The value on whole steps and within its field. */
export function settled(value: number, field: NumberField, system: System): number {
  const step = stepOf(field, system);
  const whole = Math.round(value / step) * step;
  return Math.min(field.max, Math.max(field.min, Number(whole.toFixed(6))));
}

/** The value with the hand at a point of the drawing; the handle's own where the hand has hardly moved. */
export function valueAt(handle: Handle, point: Point, system: System): number {
  const value = valueNear(handle, point, handle.value);
  return Math.abs(value - handle.value) < stepOf(handle.field, system) / 2
    ? handle.value
    : settled(value, handle.field, system);
}

/**
 * The value after an arrow key, `dx` or `dy` steps as the page runs (right and down): a handle moves as it is drawn. Keys
 * across its way move it too, up and right for more.
 */
export function valueAfterKey(handle: Handle, dx: number, dy: number, system: System): number {
  const { value, field } = handle;
  const [mx, my] = movePerUnit(handle, value);
  const along = mx * dx + my * dy;
  const across = mx * dy + my * dx;
  const more = Math.abs(along) >= Math.abs(across) / 2 ? along : dx - dy;
  const steps = Math.max(Math.abs(dx), Math.abs(dy)) * Math.sign(more);
  return settled(value + steps * stepOf(field, system), field, system);
}

export function isUpright(handle: Handle): boolean {
  const [mx, my] = movePerUnit(handle, handle.value);
  return Math.abs(my) > Math.abs(mx);
}

/** Half of the least that a thumb hits, pixels. */
const REACH_PX = 22;
/** From its place to the middle of its grip, pixels. */
const GRIP_PX = 9;
/** From its place to the middle of its hold, pixels: a little beyond the grip, away from the neighbours. */
const HOLD_PX = 16;

const WAYS: Readonly<Record<Handle['towards'], Point>> = {
  up: [0, -1],
  down: [0, 1],
  left: [-1, 0],
  right: [1, 0],
  about: [0, 0],
};

/** The hold's corner from the handle's place, pixels. */
export function holdOf({ towards }: Handle): { readonly x: number; readonly y: number; readonly px: number } {
  const [x, y] = WAYS[towards];
  return { x: x * HOLD_PX - REACH_PX, y: y * HOLD_PX - REACH_PX, px: 2 * REACH_PX };
}

/** Of the handles whose holds lie under a point, the one whose grip is nearest; where none does, undefined. */
export function nearestHandle(handles: readonly Handle[], [x, y]: Point): Handle | undefined {
  const under = handles.flatMap((handle) => {
    const [px, py] = handle.placeOf(handle.value);
    const hold = holdOf(handle);
    const [dx, dy] = [x - px - hold.x, y - py - hold.y];
    if (dx < 0 || dy < 0 || dx > hold.px || dy > hold.px) return [];
    const [wx, wy] = WAYS[handle.towards];
    return [{ handle, far: Math.hypot(x - px - wx * GRIP_PX, y - py - wy * GRIP_PX) }];
  });
  return under.toSorted((a, b) => a.far - b.far)[0]?.handle;
}

/**
 * Handles on the sizes that a drawing shows: of every shape the most telling, of the chosen one (or, where that is not
 * there, the first) all. `features` are as recorded.
 */
export function handlesOn(
  marks: readonly SizeMark[],
  features: readonly Feature[],
  chosen: number | null,
): Handle[] {
  const one = marks.some(({ feature }) => feature === chosen) ? chosen : marks[0]?.feature;
  return marks
    .filter((mark) => mark.first || mark.feature === one)
    .map((mark) => {
      const { feature: i, name, value, placeOf, towards } = mark;
      const feature = features[i];
      const of = [`${featureName(feature.kind)} ${i + 1}`, sideOf(feature)].filter(Boolean).join(', ');
      return {
        id: `${i}.${name}`,
        feature: i,
        label: say.bench.sizeOf(mark.field.label, of),
        path: `features.${i}.${name}`,
        field: bounded(mark.field, name, feature),
        value,
        placeOf,
        towards,
      };
    });
}

/** A shape that ends before it starts would be no shape: what each end is bounded by. */
const ENDS: Readonly<Record<string, readonly [bound: 'min' | 'max', by: string]>> = {
  fromM: ['max', 'toM'],
  toM: ['min', 'fromM'],
  fromYM: ['max', 'toYM'],
  toYM: ['min', 'fromYM'],
};
const LEAST_LENGTH_M = 0.1;

function bounded(field: NumberField, name: string, feature: Feature): NumberField {
  if (!(name in ENDS)) return field;
  const [bound, by] = ENDS[name];
  const other = (feature as unknown as Readonly<Record<string, number>>)[by];
  return bound === 'max'
    ? { ...field, max: Math.min(field.max, other - LEAST_LENGTH_M) }
    : { ...field, min: Math.max(field.min, other + LEAST_LENGTH_M) };
}

/** The handle on the line's offset in a cut across; `xOf` places what lies left of the main line, as travelled. */
export function offsetHandle(offsetM: number, turned: 1 | -1, xOf: (yM: number) => number): Handle {
  return {
    id: 'offset',
    feature: null,
    label: say.bench.offsetOfLine,
    path: null,
    field: offsetFields.offsetM,
    value: offsetM * turned,
    placeOf: (value) => [xOf(value * turned), OFFSET_DOWN_PX],
    towards: 'about',
  };
}

/** Where the offset is dimensioned, above everything. */
const OFFSET_DOWN_PX = 30;
