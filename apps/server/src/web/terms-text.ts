import { moneyText } from './money-text.ts';

export interface Terms {
  returnDays: number;
  windowStart: string;
  restockingPct: string;
  unopenedOnly: boolean;
  daysToCredit: number;
  returnCarriage: string;
}

const START_WORDS: Readonly<Record<string, string>> = {
  arrived: 'arrival',
  ordered: 'the order',
  invoiced: 'the invoice',
};

/**
 * What a supplier takes back, in one line.
 *
 * @example termsText({ returnDays: 30, windowStart: 'arrived', restockingPct: '10', unopenedOnly: true, … }, 'EUR')
 * // 'back within 30 days of arrival, unopened only, keeps 10 %, credits in 30 days'
 */
export function termsText(terms: Terms, currency: string): string {
  if (terms.returnDays === 0) return 'takes nothing back';
  const parts = [
    `back within ${terms.returnDays} days of ${START_WORDS[terms.windowStart] ?? terms.windowStart}`,
    ...(terms.unopenedOnly ? ['unopened only'] : []),
    Number(terms.restockingPct) === 0 ? 'no restocking charge' : `keeps ${Number(terms.restockingPct)} %`,
    ...(Number(terms.returnCarriage) === 0 ? [] : [`trip back ${moneyText(terms.returnCarriage, currency)}`]),
    `credits in ${terms.daysToCredit} days`,
  ];
  return parts.join(', ');
}
