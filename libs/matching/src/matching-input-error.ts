/** One thing to change: where it stands (a path such as `lines[2].net`) and what to do, in words. */
export interface MatchingProblem {
  readonly field: string;
  readonly message: string;
}

/**
 * `malformed`: a field can't be read as what it should be, or an id occurs twice.
 * `too-many`: more pieces, or more look-alikes, than can be matched at once.
 */
export type MatchingInputCode = 'malformed' | 'too-many';

/** Lines, units or documents that can't be matched as they are; `problems` says for each field what to change. */
export class MatchingInputError extends Error {
  override readonly name = 'MatchingInputError';

  constructor(
    readonly code: MatchingInputCode,
    readonly problems: readonly MatchingProblem[],
  ) {
    super(problems.map((problem) => problem.message).join(' '));
  }
}
