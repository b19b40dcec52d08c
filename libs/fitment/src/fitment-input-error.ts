/**
 * `malformed`: a figure is no number, negative where it can't be, or names something that isn't there.
 * `impossible`: each figure can be read, but together they can't be, or a reading makes no sense.
 */
export type FitmentInputCode = 'malformed' | 'impossible';

/** One thing to change: where it stands (a path such as `features[2].tolerance`) and what to do, in words. */
export interface FitmentProblem {
  readonly field: string;
  readonly message: string;
}

/** The question can't be answered as put; `problems` says for each field what to change. */
export class FitmentInputError extends Error {
  override readonly name = 'FitmentInputError';

  constructor(
    readonly code: FitmentInputCode,
    readonly problems: readonly FitmentProblem[],
  ) {
    super(problems.map((problem) => problem.message).join(' '));
  }
}
