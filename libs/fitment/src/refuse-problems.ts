import { FitmentInputError, type FitmentInputCode, type FitmentProblem } from './fitment-input-error.ts';

/**
 * Throws when there is anything to refuse, with all of it at once.
 *
 * @throws FitmentInputError when `problems` isn't empty
 * @example refuseProblems('malformed', []) // nothing happens
 */
export function refuseProblems(code: FitmentInputCode, problems: readonly FitmentProblem[]): void {
  if (problems.length > 0) throw new FitmentInputError(code, problems);
}
