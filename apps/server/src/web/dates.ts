import { DateTime } from 'luxon';

type Words = Partial<Record<Intl.DateTimeFormatPartTypes, string>>;
const formats = new Map<string, Intl.DateTimeFormat>();

/** Also in the browser, where nothing heavier than its own calendar should be loaded. */
function wordsOf(at: Date, timeZone: string, month: 'short' | 'long' | '2-digit' = 'short'): Words {
  const key = `${timeZone} ${month}`;
  const options = {
    weekday: 'short',
    day: 'numeric',
    month,
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  } as const;
  const format = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', { ...options, timeZone });
  formats.set(key, format);
  return Object.fromEntries(format.formatToParts(at).map(({ type, value }) => [type, value]));
}

/** @example dateText(new Date('2026-06-09T10:00Z'), 'Europe/Dublin') // '9 Jun 2026' */
export function dateText(at: Date, timeZone: string): string {
  const { day, month, year } = wordsOf(at, timeZone);
  return `${day} ${month} ${year}`;
}

/** @example dayText(…) // 'Tue 9 June' */
export function dayText(at: Date, timeZone: string): string {
  const { weekday, day, month } = wordsOf(at, timeZone, 'long');
  return `${weekday} ${day} ${month}`;
}

/** @example timeText(…) // '09:40' */
export function timeText(at: Date, timeZone: string): string {
  const { hour, minute } = wordsOf(at, timeZone);
  return `${hour}:${minute}`;
}

/** @example dateTimeText(…) // '9 Jun, 09:40' */
export function dateTimeText(at: Date, timeZone: string): string {
  const { day, month } = wordsOf(at, timeZone);
  return `${day} ${month}, ${timeText(at, timeZone)}`;
}

/** For an input of type date. @example isoDay(…) // '2026-06-09' */
export function isoDay(at: Date, timeZone: string): string {
  const { day = '', month, year = '' } = wordsOf(at, timeZone, '2-digit');
  return `${year.padStart(4, '0')}-${month}-${day.padStart(2, '0')}`;
}

/** A day column (no time, no zone). @example plainDate(new Date('2026-06-09T00:00Z')) // '9 Jun 2026' */
export const plainDate = (day: Date): string => dateText(day, 'UTC');

const there = (at: Date, timeZone: string): DateTime => DateTime.fromJSDate(at, { zone: timeZone });

/** The instants at which this day begins and ends there: 23 or 25 hours apart twice a year. */
export function dayBounds(at: Date, timeZone: string): { from: Date; to: Date } {
  const start = there(at, timeZone).startOf('day');
  return { from: start.toJSDate(), to: start.plus({ days: 1 }).toJSDate() };
}

const FIRST_YEAR = 1970;
const LAST_YEAR = 2199;

/** A year that a workshop can mean: beyond these a typing slip would become a date that the database can't order or hold. */
const isOurs = ({ isValid, year }: DateTime): boolean => isValid && year >= FIRST_YEAR && year <= LAST_YEAR;

/** What a person typed into fields of type date and time, at that place. Undefined where such an instant does not exist, or not from 1970 to 2199. */
export function instantAt(day: string, time: string, timeZone: string): Date | undefined {
  const typed = DateTime.fromFormat(`${day} ${time}`, 'yyyy-MM-dd HH:mm', { zone: timeZone });
  // In the hour that the clocks skip, luxon moves on: then what is read back differs from what was typed.
  return isOurs(typed) && typed.toFormat('yyyy-MM-dd HH:mm') === `${day} ${time}` ? typed.toJSDate() : undefined;
}

/** A day as a date column keeps it. Undefined where the day does not exist, or not from 1970 to 2199. */
export function dayColumn(day: string): Date | undefined {
  const typed = DateTime.fromFormat(day, 'yyyy-MM-dd', { zone: 'utc' });
  return isOurs(typed) ? typed.toJSDate() : undefined;
}

/** Whether a day (of a date column) is over where the workshop is: it is late from the next morning on. */
export const isPast = (day: Date, now: Date, timeZone: string): boolean => isoDay(day, 'UTC') < isoDay(now, timeZone);
