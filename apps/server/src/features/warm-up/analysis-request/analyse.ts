import { analyseWarmUp, WarmUpInputError, type WarmUpAnalysis, type WarmUpInput } from '#libs/warm-up';
import { badRequest } from '../warm-up.errors.ts';

/** @throws bad-warm-up for readings to which no answer can be given */
export function analyse(input: WarmUpInput): WarmUpAnalysis {
  try {
    return analyseWarmUp(input);
  } catch (error) {
    if (error instanceof WarmUpInputError) throw badRequest([{ field: error.field, message: error.message }]);
    throw error;
  }
}
