import { LOG_LIMITS } from './log/log-limits.ts';
import { type WarmUpInput } from './types/warm-up-input.ts';
import { WarmUpInputError } from './warm-up-input-error.ts';

const NOMINAL_C = { low: 50, high: 120 };

/** Refuses what no answer can be given to. */
export function checkInput({ samples, nominalOpeningC, mostSamples = LOG_LIMITS.rows }: WarmUpInput): void {
  if (samples.length === 0)
    throw new WarmUpInputError(
      'samples',
      'There are no samples: send at least one reading of time (timeS) and coolant temperature (coolantC).',
    );
  if (samples.length > mostSamples) {
    throw new WarmUpInputError(
      'samples',
      `${samples.length} samples are too many; at most ${mostSamples} are taken at once. Send the first hour, or fewer readings a second.`,
    );
  }
  if (!samples.some(({ timeS, coolantC }) => Number.isFinite(timeS) && Number.isFinite(coolantC))) {
    throw new WarmUpInputError('samples', 'No sample has both timeS and coolantC as numbers.');
  }
  if (nominalOpeningC !== undefined && !(nominalOpeningC >= NOMINAL_C.low && nominalOpeningC <= NOMINAL_C.high)) {
    throw new WarmUpInputError(
      'nominalOpeningC',
      `The nominal opening temperature must lie between ${NOMINAL_C.low} and ${NOMINAL_C.high} °C; is it in °F?`,
    );
  }
}
