import type { ChoiceWord, Field, FieldTable, Values } from '../field.ts';
import { checkValues } from '../field.ts';
import type { Problem } from '../problem.ts';
import { TRIP_LIMITS } from './limits.ts';
import { say } from '../words/words.ts';

export type Plain = Readonly<Record<string, unknown>>;

/** Takes values out of plain records that nobody has checked, and lists what is wrong with them by path. */
export class Reader {
  readonly #problems: Problem[] = [];
  #unlisted = 0;

  add(problems: readonly Problem[]): void {
    const room = TRIP_LIMITS.problems - this.#problems.length;
    this.#problems.push(...problems.slice(0, room));
    this.#unlisted += Math.max(0, problems.length - room);
  }

  error(where: string, what: string, done: string, times = 1): void {
    this.add([{ severity: 'error', where, what, done, times }]);
  }

  warning(where: string, what: string, done: string, times = 1): void {
    this.add([{ severity: 'warning', where, what, done, times }]);
  }

  /** Errors first, each group in the order found. */
  problems(): Problem[] {
    const all = [...this.#problems];
    if (this.#unlisted > 0)
      all.push({
        severity: 'error',
        where: say.problem.theFile,
        what: say.tripFile.morePiled(this.#unlisted),
        done: say.tripFile.morePiledDone,
        times: 1,
      });
    return [...all.filter((p) => p.severity === 'error'), ...all.filter((p) => p.severity === 'warning')];
  }

  /** A record, or null where there is none. */
  record(value: unknown, where: string, names?: readonly string[]): Plain | null {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      this.error(where, say.tripFile.notRecord(spoken(value)), say.tripFile.couldNotRead);
      return null;
    }
    if (names) this.names(value as Plain, where, names);
    return value as Plain;
  }

  /** Warns of names that a record should not have: a value under a misspelt name is lost. */
  names(record: Plain, where: string, names: readonly string[]): void {
    for (const name of Object.keys(record))
      if (!names.includes(name))
        this.warning(pathTo(where, printable(name)), say.tripFile.unknownName, say.tripFile.passedOver);
  }

  /** A list, cut at `most`; empty where there is none. */
  list(value: unknown, where: string, most: number): readonly unknown[] {
    if (!Array.isArray(value)) {
      this.error(where, say.tripFile.notList(spoken(value)), say.tripFile.readEmpty);
      return [];
    }
    if (value.length <= most) return value as unknown[];
    this.error(where, say.tripFile.longList(value.length, most), say.tripFile.restLeftOut);
    return value.slice(0, most) as unknown[];
  }

  /** A text, cut at `most`; empty where there is none. */
  text(value: unknown, where: string, most: number = TRIP_LIMITS.textLength): string {
    if (typeof value !== 'string') {
      this.error(where, say.tripFile.notText(spoken(value)), say.tripFile.readEmpty);
      return '';
    }
    if (value.length <= most) return value;
    this.warning(where, say.tripFile.longText(most), say.tripFile.cutThere);
    return value.slice(0, most);
  }

  /** A name that nothing else in `ids` has, made from `spare` where the file gives none. */
  id(value: unknown, where: string, ids: Set<string>, spare: string): string {
    const usable = typeof value === 'string' && value !== '' && value.length <= TRIP_LIMITS.idLength;
    let id = usable ? value : spare;
    for (let n = 2; ids.has(id); n++) id = `${usable ? value : spare}-${n}`;
    ids.add(id);
    if (!usable) this.error(where, say.tripFile.needsId(TRIP_LIMITS.idLength), say.tripFile.namedId(id));
    else if (id !== value)
      this.error(where, say.tripFile.twice(printable(value)), say.tripFile.renamedId(id));
    return id;
  }

  /** The values of `record` that a table describes, each of them checked. */
  values<T extends FieldTable>(fields: T, record: Plain | null, where: string): Taken<T> {
    if (record)
      this.add(checkValues(fields, record, where).map((p) => ({ ...p, where: p.where.replace(/^\./, '') })));
    return taken(fields, record);
  }
}

export interface Taken<T extends FieldTable> {
  readonly values: Values<T>;
  /**
   * False where a choice or a flag could not be read: a first choice or a no stands there, and the caller must see to
   * it that nothing is judged by it.
   */
  readonly whole: boolean;
}

/**
 * The values of `record` that a table describes, unchecked. A number out of range stays as it is, so that nothing
 * entered is lost; what is no number becomes NaN, not known.
 */
export function taken<T extends FieldTable>(fields: T, record: Plain | null): Taken<T> {
  let whole = true;
  const values: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    const value = usable(field, record?.[name]);
    if (value === undefined) whole = false;
    values[name] = value ?? standIn(field);
  }
  return { values: values as Values<T>, whole };
}

export function pathTo(where: string, name: string): string {
  return where === '' ? name : `${where}.${name}`;
}

/** The value as it may be kept, or undefined where it tells nothing. */
function usable(field: Field, value: unknown): unknown {
  switch (field.kind) {
    case 'number':
      return typeof value === 'number' && Number.isFinite(value) ? value : NaN;
    case 'choice':
      return field.choices.includes(value as ChoiceWord) ? value : undefined;
    case 'flag':
      return typeof value === 'boolean' ? value : undefined;
  }
}

function standIn(field: Field): unknown {
  return field.kind === 'choice' ? field.choices[0] : false;
}

/** What a value is, for a sentence. */
function spoken(value: unknown): string {
  if (value === undefined) return say.tripFile.is.missing;
  if (value === null) return say.tripFile.is.empty;
  if (Array.isArray(value)) return say.tripFile.is.list;
  if (typeof value === 'object') return say.tripFile.is.record;
  return typeof value === 'string'
    ? say.tripFile.is.text(printable(value))
    : say.tripFile.is.other(typeof value);
}

/** Text from a foreign file, short and on one line. */
export function printable(text: string): string {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 60)}…` : line;
}
