import { dayColumn } from '../../../web/dates.ts';
import type { DayOrder } from './file-reading.types.ts';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * A day as suppliers write it, as YYYY-MM-DD; undefined where there is no such day. A time behind it is left off.
 *
 * @example readDay('9/6/26', 'dmy') // '2026-06-09'
 * @example readDay('9 Jun 2026', 'mdy') // '2026-06-09'
 */
export function readDay(text: string, order: DayOrder): string | undefined {
  const parts = text.trim().split(/[\s./-]+/);
  const [a = '', b = '', c = ''] = parts;
  const month = MONTHS.indexOf(b.toLowerCase().slice(0, 3)) + 1;
  if (month > 0) return dayOf(c, String(month), a);
  if (/^\d{4}$/.test(a)) return dayOf(a, b, c.replace(/T.*$/, ''));
  if (order === 'mdy') return dayOf(c, a, b);
  return order === 'ymd' ? dayOf(a, b, c) : dayOf(c, b, a);
}

function dayOf(year: string, month: string, day: string): string | undefined {
  if (!/^(\d{2}|\d{4})$/.test(year) || !/^\d{1,2}$/.test(month) || !/^\d{1,2}$/.test(day)) return undefined;
  const full = `${year.length === 2 ? `20${year}` : year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return dayColumn(full) === undefined ? undefined : full;
}
