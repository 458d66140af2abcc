import { describe, expect, it } from 'vitest';
import { answerAll } from '../../src/workers/pool.ts';

/** A lane that answers after a number of turns of the event loop. */
function slowLane(turns: (task: number) => number) {
  return {
    ask: async (task: number) => {
      for (let i = 0; i < turns(task); i++) await Promise.resolve();
      return task * task;
    },
  };
}

const tasks = Array.from({ length: 50 }, (_, i) => i);

describe('answering tasks on lanes', () => {
  it('keeps the order of the tasks, however many lanes there are and however slow each is', async () => {
    const one = await answerAll(tasks, [slowLane(() => 1)]);
    const many = await answerAll(tasks, [slowLane((t) => t % 7), slowLane(() => 1), slowLane((t) => 50 - t)]);
    expect(many).toEqual(one);
    expect(one).toEqual(tasks.map((t) => t * t));
  });

  it('tells of each answer as it comes', async () => {
    const seen: number[] = [];
    await answerAll(tasks, [slowLane(() => 1), slowLane(() => 9)], (_, index) => seen.push(index));
    expect(seen.toSorted((a, b) => a - b)).toEqual(tasks);
  });

  it('asks nothing more once cancelled, and says that there is no answer', async () => {
    const stop = new AbortController();
    let told = 0;
    const answer = await answerAll(
      tasks,
      [slowLane(() => 1)],
      () => {
        if (++told === 10) stop.abort();
      },
      stop.signal,
    );
    expect(answer).toBeNull();
    expect(told).toBe(10);
  });
});
