import { dateTimeText, isoDay, timeText } from '../../../web/dates.ts';

/** The time of day, with its date where that is not today. Empty for what is no time. */
export function whenWords(at: string | Date, { now, timeZone }: { now: Date; timeZone: string }): string {
  const instant = new Date(at);
  if (Number.isNaN(instant.getTime())) return '';
  return isoDay(instant, timeZone) === isoDay(now, timeZone) ? timeText(instant, timeZone) : dateTimeText(instant, timeZone);
}
