/** A day of the calendar, month 1 to 12. */
export interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

function daysIn(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/**
 * A day written year-month-day.
 *
 * @param text Such as 2026-03-31
 * @returns The day, or undefined where it isn't one
 * @example parseCalendarDate('2026-02-30') // undefined
 */
export function parseCalendarDate(text: string): CalendarDate | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const isDay = year >= 1900 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
  return isDay ? { year, month, day } : undefined;
}

/**
 * The same day some months later; the last of the month where that month is shorter.
 *
 * @param date The day
 * @param months Whole months, 0 or more
 * @returns Written year-month-day
 * @example monthsLater({ year: 2024, month: 2, day: 29 }, 12) // '2025-02-28'
 */
export function monthsLater(date: CalendarDate, months: number): string {
  const ahead = date.month - 1 + months;
  const year = date.year + Math.floor(ahead / 12);
  const month = (ahead % 12) + 1;
  const day = Math.min(date.day, daysIn(year, month));
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
