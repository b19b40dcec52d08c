const MS_PER_DAY = 86_400_000;

/**
 * Days since 1 January 1970 of a date written YYYY-MM-DD; null for anything that is no such date.
 *
 * @example dayNumber('1970-01-02') // 1
 * @example dayNumber('2026-02-30') // null
 */
export function dayNumber(date: string): number | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return null;
  const time = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date) return null;
  return time / MS_PER_DAY;
}
