import type { NumberField } from '../field.ts';
import { valueFault } from '../field.ts';
import type { System } from '../units.ts';
import { fromPercent, fromShown, toShown, unitLabel, written } from '../units.ts';
import { say } from '../words/words.ts';

/** What a person typed into a box, understood or not. */
export type Typed =
  { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly fault: string };

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/**
 * Reads a typed number in the unit the screen shows; comma or point as the decimal sign, any minus sign, the unit may
 * stand behind it; a steepness in percent with its sign behind it. An empty box is null where `mayBeEmpty`. The value is SI and within the field's range, or there is a fault.
 */
export function readTyped(text: string, field: NumberField, system: System, mayBeEmpty = false): Typed {
  const unit = unitLabel(field.quantity, system);
  const trimmed = text.trim();
  const inPercent = field.quantity === 'angle' && trimmed.endsWith('%');
  const behind = inPercent ? '%' : unit;
  const bare = behind !== '' && trimmed.endsWith(behind) ? trimmed.slice(0, -behind.length).trim() : trimmed;
  const plain = bare.replace(/[\u2212\u2013]/g, '-').replace(',', '.');
  if (plain === '') {
    if (mayBeEmpty) return { ok: true, value: null };
    return { ok: false, fault: say.entry.empty(field.label, rangeText(field, system)) };
  }
  if (!NUMBER.test(plain)) {
    const example = toShown(field.min + (field.max - field.min) * 0.6, field.quantity, system);
    return { ok: false, fault: say.entry.noNumber(trimmed, written(String(example))) };
  }
  const typed = Number(plain);
  const value = inPercent ? fromPercent(typed) : fromShown(typed, field.quantity, system);
  const fault = valueFault(field, atTheEdge(value, field, system), system);
  return fault === null
    ? { ok: true, value: atTheEdge(value, field, system) }
    : { ok: false, fault: say.entry.otherUnit(fault) };
}

/** A bound typed as it is shown, rounded, is the bound itself. */
function atTheEdge(value: number, field: NumberField, system: System): number {
  const read = toShown(value, field.quantity, system);
  if (value < field.min && read === toShown(field.min, field.quantity, system)) return field.min;
  if (value > field.max && read === toShown(field.max, field.quantity, system)) return field.max;
  return value;
}

/** What stands in the box for a value; empty for a value that nobody knows. */
export function boxText(value: number | null, field: NumberField, system: System): string {
  if (value === null || Number.isNaN(value)) return '';
  return written(String(toShown(value, field.quantity, system)));
}

/** Such as `5 to 150 cm`. From 10 on in whole numbers, each within the range: tenths there come of another unit alone. */
export function rangeText({ min, max, quantity }: NumberField, system: System): string {
  const within = (bound: number, toWhole: (value: number) => number) => {
    const value = toShown(bound, quantity, system);
    return Math.abs(value) < 10 ? value : toWhole(value);
  };
  const from = written(String(within(min, Math.ceil)));
  const to = written(String(within(max, Math.floor)));
  const unit = unitLabel(quantity, system);
  return say.entry.range(from, unit === '' || unit === '°' ? to + unit : `${to} ${unit}`);
}

/** The typed text with its sign turned. */
export function turned(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '') return '−';
  return /^[-\u2212\u2013]/.test(trimmed) ? trimmed.slice(1) : `−${trimmed.replace(/^\+/, '')}`;
}
