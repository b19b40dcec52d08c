import { Decimal, sumAmounts } from '#libs/money';
import { type METHODS } from '../money/method-words.ts';
import type { TakenMoney } from './books.repository.ts';

export type Method = (typeof METHODS)[number];

/** What should be there by each method: in the drawer also what was left in it. */
export function expectedByMethod(taken: readonly Pick<TakenMoney, 'method' | 'amount'>[], floatBefore: string): Record<Method, string> {
  const sumOf = (method: Method): string =>
    sumAmounts(taken.filter((money) => money.method === method).map(({ amount }) => amount))
      .plus(method === 'cash' ? floatBefore : '0')
      .toFixed(2);
  return { cash: sumOf('cash'), card: sumOf('card'), transfer: sumOf('transfer'), other: sumOf('other') };
}

/** @example differenceOf({ expected: '150.00', counted: '149.00' }) // '-1.00' */
export const differenceOf = ({ expected, counted }: { expected: string; counted: string }): string =>
  new Decimal(counted).minus(expected).toFixed(2);
