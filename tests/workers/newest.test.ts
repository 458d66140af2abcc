import { expect, test } from 'vitest';
import { newestOnly } from '../../src/workers/newest.ts';

/** Answers only when told to. */
function slow() {
  const open: { task: number; answer: (value: string) => void; fail: (error: Error) => void }[] = [];
  const ask = (task: number) =>
    new Promise<string>((answer, fail) => {
      open.push({ task, answer, fail });
    });
  return { open, ask };
}

const settle = () => new Promise((resolve) => setTimeout(resolve));

test('one at a time, and of those asked meanwhile only the last', async () => {
  const { open, ask } = slow();
  const told: [string, number][] = [];
  const post = newestOnly(
    ask,
    (answer, task) => told.push([answer, task]),
    () => {},
  );
  for (const task of [1, 2, 3, 4]) post(task);
  expect(open.map(({ task }) => task)).toEqual([1]);
  open[0].answer('one');
  await settle();
  expect(open.map(({ task }) => task)).toEqual([1, 4]);
  open[1].answer('four');
  await settle();
  expect(told).toEqual([
    ['one', 1],
    ['four', 4],
  ]);
  post(5);
  expect(open.map(({ task }) => task)).toEqual([1, 4, 5]);
});

test('a failure is told, and the next is asked all the same', async () => {
  const { open, ask } = slow();
  const faults: unknown[] = [];
  const post = newestOnly(
    ask,
    () => {},
    (error) => faults.push(error),
  );
  post(1);
  post(2);
  open[0].fail(new Error('no'));
  await settle();
  expect(faults).toHaveLength(1);
  expect(open.map(({ task }) => task)).toEqual([1, 2]);
});
