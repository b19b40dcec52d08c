import { Decimal, toDecimal } from '#libs/money';
import { type MoneyEntry } from './money-entry.ts';

/**
 * What is still open on a unit: charged − credited − paid by the carrier − accepted loss. Negative: credited too much, we owe.
 *
 * @param entries The unit's account
 * @returns The open amount, net
 * @example openAmount([{ id: 'm1', kind: 'charged', amountNet: '31.20', at: '2026-06-09', by: 'ines', reference: 'R 1' }]).toFixed(2) // '31.20'
 */
export function openAmount(entries: readonly Pick<MoneyEntry, 'kind' | 'amountNet'>[]): Decimal {
  return entries.reduce((open, { kind, amountNet }) => {
    const amount = toDecimal(amountNet);
    return kind === 'charged' ? open.plus(amount) : open.minus(amount);
  }, new Decimal(0));
}
