/** Something that answers one task at a time: a worker, or the page itself. */
export interface Lane<Task, Answer> {
  ask(task: Task): Promise<Answer>;
}

/**
 * Every task answered, in the order of the tasks, however many lanes there are and however fast each is. `onAnswer` is
 * told of each as it comes. Null when `signal` was raised before the last answer; no further task is then asked.
 */
export async function answerAll<Task, Answer>(
  tasks: readonly Task[],
  lanes: readonly Lane<Task, Answer>[],
  onAnswer: (answer: Answer, index: number) => void = () => {},
  signal?: AbortSignal,
): Promise<Answer[] | null> {
  const answers: Answer[] = new Array<Answer>(tasks.length);
  let next = 0;
  const work = async (lane: Lane<Task, Answer>): Promise<void> => {
    while (next < tasks.length && !signal?.aborted) {
      const index = next++;
      answers[index] = await lane.ask(tasks[index]);
      if (!signal?.aborted) onAnswer(answers[index], index);
    }
  };
  await Promise.all(lanes.map(work));
  return signal?.aborted ? null : answers;
}
