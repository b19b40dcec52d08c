import { type DecimalString, isDecimalString, toDecimal } from '#libs/money';
import { type Answer, no, YES } from './answer.ts';

export const MONEY_KINDS = ['charged', 'credited', 'carrier-paid', 'loss-accepted'] as const;

export type MoneyKind = (typeof MONEY_KINDS)[number];

/** One entry in a unit's account, net of tax. Entries are never changed or removed: a counter-entry takes one back. */
export interface MoneyEntry {
  readonly id: string;
  readonly kind: MoneyKind;
  /** Positive; negative only in a counter-entry. */
  readonly amountNet: DecimalString;
  readonly at: string;
  readonly by: string;
  /** The document it stands on: invoice, credit note, the carrier's letter. */
  readonly reference: string;
  /** The entry this one takes back. */
  readonly counters?: string;
}

/**
 * Whether an entry may be added to a unit's account.
 *
 * @param entries The account so far
 * @param entry The new entry
 * @returns Yes, or why not
 * @example checkMoneyEntry([], { id: 'm1', kind: 'charged', amountNet: '0', at: '2026-06-09', by: 'ines', reference: 'R 1' }).ok // false
 */
export function checkMoneyEntry(entries: readonly MoneyEntry[], entry: MoneyEntry): Answer {
  if (!isDecimalString(entry.amountNet)) return no('The amount is no figure such as 12.50.');
  if (entries.some((one) => one.id === entry.id)) return no('This entry has been made already.');
  if (entry.by.trim() === '' || entry.at.trim() === '') return no('Every entry says who and when.');
  const amount = toDecimal(entry.amountNet);
  if (entry.counters === undefined)
    return amount.greaterThan(0) ? YES : no('The amount has to be more than nothing; take an entry back instead.');
  const target = entries.find((one) => one.id === entry.counters);
  if (!target || target.counters !== undefined) return no('There is no such entry to take back.');
  if (entries.some((one) => one.counters === entry.counters)) return no('That entry has been taken back already.');
  if (target.kind !== entry.kind || !toDecimal(target.amountNet).plus(amount).isZero()) {
    return no('A counter-entry has the kind of the entry it takes back and its amount with a minus.');
  }
  return YES;
}
