import type { ToldLog } from './told-log.ts';

export interface ComparisonRow {
  name: string;
  cells: string[];
}

const ROWS: readonly (readonly [name: string, of: (log: ToldLog) => string])[] = [
  ['Driven', ({ when }) => when],
  ['Starts at', ({ starts }) => starts],
  ['Warms by', ({ pace }) => pace],
  ['Reaches 80 °C', ({ reaches80 }) => reaches80],
  ['First peak', ({ firstPeak }) => firstPeak],
  ['Settles at', ({ settles }) => settles],
  ['Opens at', ({ opens }) => opens],
  ['Falls with speed', ({ fallsWithSpeed }) => fallsWithSpeed],
];

/** Logs side by side, one quantity a row. */
export const comparisonRows = (logs: readonly ToldLog[]): ComparisonRow[] => ROWS.map(([name, of]) => ({ name, cells: logs.map(of) }));
