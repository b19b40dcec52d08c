import { isDecimalString } from './is-decimal-string.ts';
import { type MarkupBand, type MarkupRule } from './markup-rule.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * What is wrong with a mark-up rule, in words for the person who set it; empty when it can be used.
 *
 * @example checkMarkupRule({ kind: 'margin', percent: '100' }) // ['A margin of 100 % or more …']
 */
export function checkMarkupRule(rule: MarkupRule): string[] {
  return [...checkFigures(rule), ...checkStep(rule.roundTo)];
}

function checkFigures(rule: MarkupRule): string[] {
  switch (rule.kind) {
    case 'percent':
      return notNegative(rule.percent, 'The mark-up');
    case 'amount':
      return notNegative(rule.amount, 'The sum on top');
    case 'margin': {
      const problems = notNegative(rule.percent, 'The margin');
      if (problems.length > 0) return problems;
      return toDecimal(rule.percent).gte(100) ? ['A margin of 100 % or more has no selling price. Set it below 100.'] : [];
    }
    case 'bands':
      return checkBands(rule.bands);
  }
}

function notNegative(figure: string, what: string): string[] {
  const isNumber: boolean = isDecimalString(figure);
  if (!isNumber) return [`${what} "${figure}" is not a number. Write it with a point, such as 12.50.`];
  return toDecimal(figure).isNegative() ? [`${what} is below zero. Set it to zero or more.`] : [];
}

function checkBands(bands: readonly MarkupBand[]): string[] {
  if (bands.length === 0) return ['The rule has no band. Add one without a top.'];
  const problems = bands.flatMap((band, index) => [
    ...notNegative(band.percent, `The mark-up of band ${index + 1}`),
    ...(band.upToCost === null ? [] : notNegative(band.upToCost, `The top of band ${index + 1}`)),
  ]);
  if (problems.length > 0) return problems;
  if (bands.at(-1)?.upToCost !== null) problems.push('The last band has a top, so a dearer part has no price. Leave its top open.');
  for (const [index, band] of bands.slice(0, -1).entries()) {
    if (band.upToCost === null) problems.push(`Band ${index + 1} has no top, so the bands after it are never used. Give it one.`);
    const before = bands[index - 1]?.upToCost;
    if (band.upToCost !== null && before && toDecimal(band.upToCost).lte(toDecimal(before)))
      problems.push(`Band ${index + 1} ends at or below the one before it. Put the bands in rising order.`);
  }
  return problems;
}

function checkStep(step: string | undefined): string[] {
  if (step === undefined) return [];
  const isNumber: boolean = isDecimalString(step);
  if (!isNumber || toDecimal(step).lte(0)) return [`"${step}" is no step to round to. Use one such as 0.05.`];
  return toDecimal(step).times(100).isInteger() ? [] : ['The step is finer than a cent. Use whole cents.'];
}
