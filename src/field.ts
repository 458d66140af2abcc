import type { Problem } from './problem.ts';
import type { Quantity, System } from './units.ts';
import { shown } from './units.ts';
import type { Words } from './words/words.ts';
import { say } from './words/words.ts';

/** A number with its unit and the range outside which it is a mistake. */
export interface NumberField {
  readonly kind: 'number';
  readonly label: string;
  readonly quantity: Quantity;
  readonly min: number;
  readonly max: number;
  /** How to measure it, or what it does, in one sentence. */
  readonly sentence: string;
}

/** What a choice is called in code and files; `say.choice` shows it. */
export type ChoiceWord = keyof Words['choice'];

export interface ChoiceField<T extends ChoiceWord = ChoiceWord> {
  readonly kind: 'choice';
  readonly label: string;
  readonly choices: readonly T[];
  readonly sentence: string;
}

export interface FlagField {
  readonly kind: 'flag';
  readonly label: string;
  readonly sentence: string;
}

/** One entry of a table that gives the type, the check, the form and the help text of a record. */
export type Field = NumberField | ChoiceField | FlagField;

export type FieldTable = Readonly<Record<string, Field>>;

/** The record that a table of fields describes. */
export type Values<T extends FieldTable> = {
  readonly [K in keyof T]: T[K] extends NumberField
    ? number
    : T[K] extends ChoiceField<infer Choice>
      ? Choice
      : boolean;
};

/** What a field is called, and how to measure it or what it does, in one sentence. */
export type FieldText = Pick<Field, 'label' | 'sentence'>;

export function number(text: FieldText, quantity: Quantity, min: number, max: number): NumberField {
  return { kind: 'number', ...text, quantity, min, max };
}

export function choice<const T extends ChoiceWord>(text: FieldText, choices: readonly T[]): ChoiceField<T> {
  return { kind: 'choice', ...text, choices };
}

export function flag(text: FieldText): FlagField {
  return { kind: 'flag', ...text };
}

/** What is wrong with one value, as a sentence, or null when it is fine. */
export function valueFault(field: Field, value: unknown, system: System = 'metric'): string | null {
  switch (field.kind) {
    case 'number': {
      if (typeof value !== 'number' || !Number.isFinite(value)) return say.fields.notANumber(field.label);
      if (value >= field.min && value <= field.max) return null;
      const from = shown(field.min, field.quantity, system);
      const to = shown(field.max, field.quantity, system);
      const is = shown(value, field.quantity, system);
      return say.fields.outside(field.label, is, from, to);
    }
    case 'choice':
      return field.choices.includes(value as ChoiceWord)
        ? null
        : say.fields.notAChoice(field.label, field.choices.join(', '));
    case 'flag':
      return typeof value === 'boolean' ? null : say.fields.notAFlag(field.label);
  }
}

/** Every value of `record` that its table does not allow. */
export function checkValues(fields: FieldTable, record: object, where: string): Problem[] {
  const problems: Problem[] = [];
  for (const [name, field] of Object.entries(fields)) {
    const fault = valueFault(field, (record as Record<string, unknown>)[name]);
    if (fault === null) continue;
    problems.push({
      severity: 'error',
      where: `${where}.${name}`,
      what: fault,
      done: say.fields.correct(field.sentence),
      times: 1,
    });
  }
  return problems;
}
