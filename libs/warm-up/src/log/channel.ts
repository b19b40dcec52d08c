import { type Quantity } from './quantity.ts';
import { type UnitSource } from './types.ts';
import { type TimeUnit, type Unit } from './units.ts';

/** One quantity as the file holds it, in the file's unit: a value for every row, NaN where the cell is blank. */
export interface Channel {
  quantity: Quantity;
  header: string;
  unit: Unit | null;
  unitFrom: UnitSource | null;
  /** Which clock its rows go by. */
  clock: number;
  values: Float64Array;
  filled: number;
}

/** A column of times, one cell per row. `cells` is called only for clocks that are used. */
export interface Clock {
  header: string;
  headerUnit: TimeUnit | null;
  cells: () => readonly string[];
  /** The same cells as numbers where they were read along; NaN where a cell is none. */
  numbers: Float64Array | null;
}

/** What a layout gives, whichever it is. For wide and long files the clocks are candidates, best first, for the same rows. */
export interface Layout {
  channels: Channel[];
  clocks: Clock[];
  sharedRows: boolean;
  /** Line in the file of each row, counted from 1. */
  lineOf: readonly number[];
  decimalMark: '.' | ',';
  /** Names of channels that were left alone, for files with one reading per row. */
  otherNames: string[];
  /** Why the rows don't fit the header, if they don't. */
  problem: string | null;
}
