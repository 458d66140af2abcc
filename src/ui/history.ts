/** A value with what it was before and what was undone; every step says what was done. */
export interface History<T> {
  readonly now: T;
  readonly past: readonly Step<T>[];
  readonly future: readonly Step<T>[];
}

interface Step<T> {
  /** The value on the far side of this step. */
  readonly value: T;
  /** What the step did, to be named in "Undo …". */
  readonly what: string;
  /** Steps in a row with the same key are one step; null never joins. */
  readonly key: string | null;
}

/** Steps kept; older ones fall off the end. A step holds only what it changed, the rest is shared. */
const MOST_STEPS = 200;

export function begin<T>(now: T): History<T> {
  return { now, past: [], future: [] };
}

/** A new value. Typing on in one box (same `key`) widens the last step instead of adding one. */
export function step<T>(history: History<T>, now: T, what: string, key: string | null = null): History<T> {
  if (now === history.now) return history;
  const last = history.past.at(-1);
  const joins = key !== null && last?.key === key && history.future.length === 0;
  const past = joins ? history.past : [...history.past, { value: history.now, what, key }].slice(-MOST_STEPS);
  return { now, past, future: [] };
}

/** The next step begins anew, even in the same box. */
export function seal<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (last === undefined || last.key === null) return history;
  return { ...history, past: [...history.past.slice(0, -1), { ...last, key: null }] };
}

export function undo<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (last === undefined) return history;
  return {
    now: last.value,
    past: history.past.slice(0, -1),
    future: [{ value: history.now, what: last.what, key: null }, ...history.future],
  };
}

export function redo<T>(history: History<T>): History<T> {
  const next = history.future[0];
  if (next === undefined) return history;
  return {
    now: next.value,
    past: [...history.past, { value: history.now, what: next.what, key: null }],
    future: history.future.slice(1),
  };
}
