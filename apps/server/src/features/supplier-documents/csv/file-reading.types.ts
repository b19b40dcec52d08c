export const ENCODINGS = ['utf-8', 'windows-1252', 'utf-16le', 'utf-16be'] as const;
export const SEPARATORS = [',', ';', '\t', '|'] as const;
export const DAY_ORDERS = ['dmy', 'mdy', 'ymd'] as const;
export const COLUMN_FIELDS = ['number', 'date', 'reference', 'part', 'text', 'quantity', 'amount', 'debit', 'credit'] as const;

export type Encoding = (typeof ENCODINGS)[number];
export type Separator = (typeof SEPARATORS)[number];
export type DayOrder = (typeof DAY_ORDERS)[number];
export type ColumnField = (typeof COLUMN_FIELDS)[number];

/** How a file is read: recognised at first, then as a person says. */
export interface FileReading {
  encoding: Encoding;
  separator: Separator;
  decimalMark: '.' | ',';
  dayOrder: DayOrder;
  /** The file's line with the names of the columns, from 1; 0 where it has none. */
  headLine: number;
  /** The column of each field, from 0. */
  columns: Partial<Record<ColumnField, number>>;
}

/** A row of the file with the line it begins on, from 1. */
export interface FileRow {
  line: number;
  cells: readonly string[];
}

export interface BadLine {
  line: number;
  message: string;
}
