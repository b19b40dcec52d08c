import { type DecimalString } from './decimal.ts';
import { dropCurrency } from './drop-currency.ts';
import { maxWholeDigits } from './is-decimal-string.ts';
import { plainDecimal } from './plain-decimal.ts';
import { type DecimalMark, readMarks } from './read-marks.ts';

export interface TypingHabits {
  /** The mark this site writes before decimals; settles '1.234', which is refused without it. */
  readonly decimalMark?: DecimalMark;
  /** The currency of the field; a sign of another one is refused. */
  readonly currency?: string;
  /** Decimals the field takes, 2 unless said; 8 at most. */
  readonly places?: number;
  /** Whether a minus is allowed; not unless said. */
  readonly negative?: boolean;
}

export type TypedAmount = { readonly ok: true; readonly amount: DecimalString } | { readonly ok: false; readonly message: string };

const refuse = (message: string): TypedAmount => ({ ok: false, message });

/**
 * Reads an amount as a person types it: '1.234,50', '1,234.50', "1'234.50", '1 234,50', '€ 12', '12,-'. What can be read
 * in two ways is refused with words that say what to type instead; nothing is guessed.
 *
 * @param typed the text of the field
 * @param habits what is known of the field and the site
 * @returns the amount as a plain decimal, or a message for the person
 * @example parseAmount('1.234,50') // { ok: true, amount: '1234.50' }
 * @example parseAmount('1.234') // { ok: false, message: '"1.234" can mean 1234 or 1 and a fraction. Type …' }
 */
export function parseAmount(typed: string, habits: TypingHabits = {}): TypedAmount {
  const text = typed.replace(/[\u00a0\u2009\u202f]/g, ' ').trim();
  if (text === '') return refuse('Nothing is typed. Type an amount, such as 12.50.');
  const signed = splitSign(text);
  const money = dropCurrency(signed.rest);
  if (money.sign !== null && habits.currency !== undefined && !money.codes.includes(habits.currency))
    return refuse(`The amount is kept in ${habits.currency}, but "${money.sign}" was typed. Change the amount to ${habits.currency}.`);
  const inner = splitSign(money.rest);
  if ((signed.negative || inner.negative) && habits.negative !== true)
    return refuse(`"${text}" is below zero. Type the amount without the minus.`);
  const amount = readDigits(inner.rest, habits);
  if (!amount.ok || !(signed.negative || inner.negative)) return amount;
  return { ok: true, amount: plainDecimal(amount.amount) === '0' ? amount.amount : `-${amount.amount}` };
}

function splitSign(text: string): { negative: boolean; rest: string } {
  const negative = /^[-\u2212]/.test(text);
  return { negative, rest: negative ? text.slice(1).trim() : text };
}

function readDigits(text: string, habits: TypingHabits): TypedAmount {
  // '12,-' is the shopkeeper's way to write 12 and no cents.
  const digits = text.replace(/[.,][-\u2013\u2014]{1,2}$/, '');
  const odd = /[^\d.,'’ ]/.exec(digits);
  if (odd) return refuse(`"${odd[0]}" is no part of an amount. Use digits only, such as 1234.50.`);
  if (!/\d/.test(digits)) return refuse(`"${text}" has no digits. Type an amount, such as 12.50.`);
  const read = readMarks(digits, habits.decimalMark);
  if (!read.ok) return read;
  const places = habits.places ?? 2;
  const fraction = read.fraction.length > places ? read.fraction.replace(/0+$/, '') : read.fraction;
  if (fraction.length > places)
    return refuse(`"${text}" has ${fraction.length} decimals, the field takes ${places}. Round it and type it again.`);
  const whole = read.whole.replace(/^0+(?=\d)/, '');
  if (whole.length > maxWholeDigits) return refuse(`"${text}" is too large: at most ${maxWholeDigits} digits before the decimals.`);
  return { ok: true, amount: fraction === '' ? whole : `${whole}.${fraction}` };
}
