import { LOG_LIMITS, type Sample } from '#libs/warm-up';
import type { FieldError } from '../../../platform/domain-error.ts';
import { badRequest, tooManySamples } from '../warm-up.errors.ts';

const OPTIONAL = ['speedKmh', 'rpm', 'loadPercent', 'ambientC', 'intakeC', 'airFlowGps'] as const;
/** Nobody reads more of them; the first ones show what is wrong with all. */
const MOST_ERRORS = 10;

/**
 * The samples of a body, by hand: 36,000 objects are too many for decorators. Other properties of a sample, such as its place, are
 * not taken over.
 *
 * @throws bad-warm-up, too-many-samples
 */
export function readSamples(raw: unknown): Sample[] {
  if (!Array.isArray(raw) || raw.length === 0)
    throw badRequest([{ field: 'samples', message: 'Send a list of samples, such as [{ "timeS": 0, "coolantC": 18 }], or a file.' }]);
  if (raw.length > LOG_LIMITS.rows)
    throw tooManySamples(
      `${raw.length} samples are too many; at most ${LOG_LIMITS.rows} are taken at once. Send the first hour, or fewer readings a second.`,
    );
  const errors: FieldError[] = [];
  const samples = raw.flatMap((one: unknown, index) => {
    if (errors.length >= MOST_ERRORS) return [];
    const found = readSample(one);
    if (!('field' in found)) return [found];
    const field = `samples.${index}${found.field === '' ? '' : `.${found.field}`}`;
    errors.push({ field, message: found.message });
    return [];
  });
  if (errors.length > 0) throw badRequest(errors);
  return samples;
}

function readSample(raw: unknown): Sample | FieldError {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return { field: '', message: 'Send each sample as an object, such as { "timeS": 0, "coolantC": 18 }.' };
  const fields = raw as Readonly<Record<string, unknown>>;
  const { timeS, coolantC } = fields;
  if (!isNumber(timeS)) return { field: 'timeS', message: 'Send the time in seconds as a number.' };
  // A moment at which the coolant was not read is dropped with the others by the analysis.
  if (!isNumber(coolantC) && coolantC !== null) return { field: 'coolantC', message: 'Send the coolant in °C as a number.' };
  const sample: Sample = { timeS, coolantC: coolantC ?? Number.NaN };
  for (const name of OPTIONAL) {
    const value = fields[name];
    if (value === undefined || value === null) continue;
    if (!isNumber(value)) return { field: name, message: 'Send a number, or leave it out.' };
    sample[name] = value;
  }
  return sample;
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
