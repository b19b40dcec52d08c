/** A time of day or a running clock as its parts. */
export interface ClockParts {
  /** Seconds without the fraction; for two fields minutes:seconds. */
  seconds: number;
  fraction: string;
  fields: 2 | 3;
}

const CLOCK = /(?:^|[^\d:.])(\d{1,3}):(\d{2})(?::(\d{2}))?(?:[.,](\d{1,9}))?(?![\d:])\s*([ap]m?\b)?/i;

/** Finds the clock in a cell, with or without a date around it: `07:03:59.524`, `12-Jul-2017 10:38:24 PM`, `59:59.5`. Null for none. */
export function readClock(cell: string): ClockParts | null {
  const match = CLOCK.exec(cell);
  if (!match) return null;
  const [, first = '', second = '', third, fraction = '', half] = match;
  const low = Number(second);
  if (low > 59 || (third !== undefined && Number(third) > 59)) return null;
  if (third === undefined) return { seconds: Number(first) * 60 + low, fraction, fields: 2 };
  let hours = Number(first);
  if (half && hours <= 12) hours = (hours % 12) + (/^p/i.test(half) ? 12 : 0);
  return { seconds: hours * 3600 + low * 60 + Number(third), fraction, fields: 3 };
}
