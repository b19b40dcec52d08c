import { FitmentInputError } from '#libs/fitment';
import { DomainError } from '../../platform/domain-error.ts';

/** The answer of the pure function, or its refusal as a problem that names each field to change. */
export function answerOrRefuse<T>(ask: () => T): T {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof FitmentInputError)) throw error;
    throw new DomainError(error.code, `fitment-${error.code}`, error.message, { errors: error.problems });
  }
}
