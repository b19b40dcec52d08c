import { Decimal, parseAmount } from '#libs/money';

export type ReadAmount = { ok: true; amount: string } | { ok: false; message: string };

/**
 * An amount as ledgers write it: a minus before or behind, brackets or CR for what is in our favour, DR for what we owe.
 *
 * @example readAmount('(1.234,50)', ',') // { ok: true, amount: '-1234.50' }
 */
export function readAmount(text: string, decimalMark: '.' | ','): ReadAmount {
  const bare = text.trim();
  const inBrackets = /^\((.*)\)$/.exec(bare)?.[1];
  const behind = /^(.*?)\s*(-|cr|dr)\.?$/i.exec(inBrackets ?? bare);
  const isTurned = inBrackets !== undefined || (behind !== null && !/^dr$/i.test(behind[2] ?? ''));
  const read = parseAmount(behind?.[1] ?? inBrackets ?? bare, { decimalMark, negative: true });
  if (!read.ok) return read;
  return { ok: true, amount: new Decimal(read.amount).times(isTurned ? -1 : 1).toFixed(2) };
}
