import { type IsoDate } from './invoice-document.ts';

const daysInMonth = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Whether a text is a real day of the calendar, 'YYYY-MM-DD'.
 *
 * @example isIsoDate('2026-02-29') // false
 */
export function isIsoDate(text: string): text is IsoDate {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = month === 2 && leap ? 29 : (daysInMonth[month - 1] ?? 0);
  return day >= 1 && day <= days;
}
