import { formatTemperature } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { MELINDER_MAX_C } from '../data/melinder.ts';
import { refuse, type Outcome } from '../outcome.ts';
import { type Strength } from '../strength/strength.ts';

/**
 * Whether properties of a mixture are published at a temperature: from its freezing point to 100 °C.
 *
 * @param strength The mixture
 * @param tempC Temperature in °C
 * @param context The field that messages point at
 * @returns Nothing beside `ok`, or the refusal with its limit
 * @example mixtureAt(halfAndHalf, 110, { field: 'toC' }).ok // false
 */
export function mixtureAt(strength: Strength, tempC: number, context: { readonly field: string }): Outcome<object> {
  const { field } = context;
  const problem = checkNumber(tempC, { field, name: 'The temperature', unit: '°C', least: -273.15 });
  if (problem) return refuse(problem);
  if (tempC > MELINDER_MAX_C) {
    return refuse({
      code: 'outside-published-range',
      kind: 'impossible',
      field,
      limit: MELINDER_MAX_C,
      message: `The published properties of glycol and water end at ${MELINDER_MAX_C} °C. Give a temperature up to there.`,
    });
  }
  if (tempC < strength.freezingPointC) {
    return refuse({
      code: 'below-freezing-point',
      kind: 'impossible',
      field,
      limit: strength.freezingPointC,
      message:
        `Below ${formatTemperature(strength.freezingPointC, { unit: '°C', decimals: 1 })} ice forms in this mixture and the published ` +
        `properties don't hold. Give a warmer temperature or a stronger mixture.`,
    });
  }
  return { ok: true };
}
