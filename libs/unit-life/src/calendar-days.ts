const DAY_MS = 86_400_000;
const DAY = /^\d{4}-\d\d-\d\d$/;

/** A calendar day as YYYY-MM-DD: dates of terms have no hour and no time zone. */
export type Day = string;

function toMs(day: Day): number {
  const ms = DAY.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(ms)) throw new RangeError(`"${day}" is no day such as 2026-06-09.`);
  return ms;
}

export function addDays(day: Day, days: number): Day {
  return new Date(toMs(day) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from one day to another; negative when the second is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return Math.round((toMs(to) - toMs(from)) / DAY_MS);
}
