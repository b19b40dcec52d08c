import { type LogLimits } from './log-limits.ts';
import { type Quantity } from './quantity.ts';
import { type TimeUnit, type Unit } from './units.ts';
import { type Sample } from '../types/sample.ts';

/** What the person answered, kept under the file's `shape` for the next one like it. */
export interface LogAnswers {
  /** Units that the file does not state. */
  units?: Partial<Record<Quantity, Unit>> & { time?: TimeUnit };
  /** Which column holds what: its header, or its number from 1. */
  columns?: Partial<Record<Quantity | 'time', string | number>>;
  /** Seconds from row to row, when no column can tell the time. */
  rowIntervalS?: number;
  /** Only for measurements of this library's own speed. */
  limits?: LogLimits;
}

/** A question with the answers it takes. `suggestion` is a guess for the person to confirm, never used by itself. */
export interface Ask {
  field: string;
  question: string;
  options: string[];
  suggestion: { answer: string; because: string } | null;
}

export type UnitSource =
  'header' | 'unit row' | 'beside each value' | 'unit column' | 'PID standard' | 'your answer' | 'none needed' | 'the steps of time';

export interface UnderstoodColumn {
  quantity: Quantity | 'time';
  header: string;
  unit: string | null;
  unitFrom: UnitSource | null;
  values: number;
}

export interface DroppedRows {
  reason: string;
  count: number;
  /** The first few, counted from 1 as an editor shows them. */
  lines: number[];
}

/** Everything that was read out of the file's form, for the person to check. */
export interface Understood {
  layout: 'wide' | 'long' | 'paired' | null;
  separator: string | null;
  decimalMark: '.' | ',' | null;
  headerLine: number | null;
  columns: UnderstoodColumn[];
  ignoredColumns: string[];
  locationColumnsDropped: string[];
  rows: number;
  samples: number;
  durationS: number;
  ratePerS: number | null;
  gaps: { fromS: number; toS: number }[];
  dropped: DroppedRows[];
  notes: string[];
  /** Questions whose answers would add something, but are not needed. */
  open: Ask[];
}

export type LogReading =
  | { ok: true; samples: Sample[]; understood: Understood; shape: string }
  | { ok: false; problem: string; asks: Ask[]; understood: Understood; shape: string };
