/**
 * Asks one thing at a time and, of all that was asked meanwhile, only the last: what a drag needs. Answers come in the
 * order of asking; those of tasks that were passed over never do.
 */
export function newestOnly<Task, Answer>(
  ask: (task: Task) => Promise<Answer>,
  told: (answer: Answer, task: Task) => void,
  failed: (error: unknown) => void,
): (task: Task) => void {
  let busy = false;
  let waiting: Task | null = null;
  const run = async (first: Task): Promise<void> => {
    busy = true;
    for (let task: Task | null = first; task !== null; task = next()) {
      try {
        told(await ask(task), task);
      } catch (error) {
        failed(error);
      }
    }
    busy = false;
  };
  const next = (): Task | null => {
    const task = waiting;
    waiting = null;
    return task;
  };
  return (task) => {
    if (busy) waiting = task;
    else void run(task);
  };
}
