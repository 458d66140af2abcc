import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { History } from '../../src/ui/history.ts';
import { begin, redo, seal, step, undo } from '../../src/ui/history.ts';

const SEED = { seed: 20250517 };
const edits = fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 60 });

function after(values: readonly number[]): History<number> {
  return values.reduce((history, value) => step(history, value, `be ${value}`), begin(0));
}

test('undo and redo are each other’s way back', () => {
  fc.assert(
    fc.property(edits, (values) => {
      const history = after(values);
      if (history.past.length === 0) return;
      const there = redo(undo(history));
      expect(there.now).toBe(history.now);
      expect(there.past.map(({ value }) => value)).toEqual(history.past.map(({ value }) => value));
    }),
    SEED,
  );
});

test('undoing everything gives the beginning, redoing everything the end', () => {
  fc.assert(
    fc.property(edits, (values) => {
      let history = after(values);
      const end = history.now;
      while (history.past.length > 0) history = undo(history);
      expect(history.now).toBe(0);
      while (history.future.length > 0) history = redo(history);
      expect(history.now).toBe(end);
    }),
    SEED,
  );
});

test('typing in one box is one step, until the box is left', () => {
  const typed = [1, 12, 123].reduce((history, value) => step(history, value, 'type', 'box'), begin(0));
  expect(undo(typed).now).toBe(0);
  const more = step(seal(typed), 1234, 'type', 'box');
  expect(undo(more).now).toBe(123);
  expect(undo(undo(more)).now).toBe(0);
});

test('a new edit after undo forgets what was undone, and nothing else', () => {
  const history = step(undo(after([1, 2])), 3, 'be 3');
  expect(history.future).toEqual([]);
  expect(undo(history).now).toBe(1);
});

test('an edit that changes nothing is no step', () => {
  expect(step(begin(5), 5, 'stay').past).toEqual([]);
});
