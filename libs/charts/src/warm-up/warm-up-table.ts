import { type DataTable } from '../drawing.ts';
import { extent } from '../scale/extent.ts';
import { scaleTicks } from '../scale/scale-ticks.ts';
import { formatFigure } from '../text/format-figure.ts';
import { type WarmUpData, type WarmUpLog, type WarmUpSample } from './warm-up-data.ts';

const MOST_ROWS = 31;
const STEPS_MIN = [1, 2, 5, 10, 15, 30, 60];

/** The last reading at or before a minute, if it is no older than one row. */
const lastBy = (log: WarmUpLog | null, minute: number, stepMin: number): WarmUpSample | undefined => {
  let last: WarmUpSample | undefined;
  for (const sample of log?.samples ?? []) {
    const isCandidate = sample.minute <= minute && sample.minute > minute - stepMin;
    if (isCandidate && (last === undefined || sample.minute >= last.minute)) last = sample;
  }
  return last;
};

const cell = (value: number | null | undefined): string => (value === null || value === undefined ? '' : formatFigure(value));

/** The logs in rows of whole steps, at most 31 of them. */
export function warmUpTable({ before, after }: WarmUpData): DataTable {
  const logs = [before, after].filter((log) => log !== null);
  const time = extent(
    logs.flatMap(({ samples }) => samples.map(({ minute }) => minute)),
    { low: 0, high: 0 },
  );
  const { ticks, step } = scaleTicks({ ...time, maxCount: MOST_ROWS, steps: STEPS_MIN });
  const minutes = logs.length === 0 ? [] : ticks;
  return {
    caption: 'Coolant temperature and road speed by the minute',
    head: ['minute', ...logs.flatMap(({ label }) => [`${label}, °C`, `${label}, km/h`])],
    rows: minutes.map((minute) => [
      formatFigure(minute),
      ...logs.flatMap((log) => {
        const sample = lastBy(log, minute, step);
        return [cell(sample?.tempC), cell(sample?.speedKmh)];
      }),
    ]),
  };
}
