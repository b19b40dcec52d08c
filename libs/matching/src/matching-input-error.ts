/** One thing to change: where it stands (a path such as `lines[2].net`) and what to do, in words. */
export interface MatchingProblem {
  readonly field: string;
  readonly message: string;
}

/** Lines, units or documents that can't be matched as they are; `problems` says for each field what to change. */
export class MatchingInputError extends Error {
  override readonly name = 'MatchingInputError';
  /** `malformed`: a field can't be read as what it should be, or an id occurs twice. */
  readonly code = 'malformed';

  constructor(readonly problems: readonly MatchingProblem[]) {
    super(problems.map((problem) => problem.message).join(' '));
  }
}
