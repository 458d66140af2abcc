import 'fmin';

type Objective = (x: number[], gradient: number[]) => number;
type Minimiser = (f: Objective, start: number[], options: { maxIterations: number }) => { x: number[] };

/** Conjugate gradients with a Wolfe line search from npm fmin 0.0.4; the objective writes its gradient into its second argument. */
export const { conjugateGradient } = (globalThis as unknown as { fmin: { conjugateGradient: Minimiser } })
  .fmin;
