/** The part of odex 2.0.4 that the tests use; the package brings its sources, which our stricter settings refuse. */
export enum Outcome {
  Converged = 0,
  MaxStepsExceeded = 1,
  EarlyReturn = 2,
}

export class Solver {
  constructor(dimension: number);
  relativeTolerance: number;
  absoluteTolerance: number;
  maxSteps: number;
  solve(
    derivative: (time: number, state: number[]) => number[],
    from: number,
    initial: number[],
    to: number,
  ): { y: number[]; outcome: Outcome; nEval: number };
}
