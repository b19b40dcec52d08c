import { DateTime } from 'luxon';

export const ZONE = 'Europe/Dublin';

/** A working day, so many days before (or, negative, after) today, at an hour of the workshop's clock. */
export function workday(now: Date, { daysAgo, hour, minute = 0 }: { daysAgo: number; hour: number; minute?: number }): Date {
  let day = DateTime.fromJSDate(now, { zone: ZONE }).startOf('day').minus({ days: daysAgo });
  while (day.weekday > 5) day = day.minus({ days: 1 });
  return day.set({ hour, minute }).toJSDate();
}

export const laterBy = (at: Date, minutes: number): Date => new Date(at.getTime() + minutes * 60_000);
