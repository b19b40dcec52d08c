/** One second of a plain warm-up, for writing it down in the many ways loggers do. */
export interface WarmUpRow {
  timeS: number;
  coolantC: number;
  speedKmh: number;
}

/** A climb of 6 °C a minute from 20 to 88 °C in whole degrees, 20 s standing and 40 s driving in turns. */
export function warmUpRows(count: number, stepS = 1): WarmUpRow[] {
  return Array.from({ length: count }, (_, index) => {
    const timeS = index * stepS;
    return { timeS, coolantC: Math.round(Math.min(88, 20 + timeS * 0.1)), speedKmh: timeS % 60 < 20 ? 0 : 50 };
  });
}

/** 07:03:59 for a number of seconds since midnight, running on past it. */
export function clockText(seconds: number): string {
  const ofDay = seconds % 86_400;
  return [Math.floor(ofDay / 3600), Math.floor(ofDay / 60) % 60, Math.floor(ofDay) % 60]
    .map((part) => String(part).padStart(2, '0'))
    .join(':');
}
