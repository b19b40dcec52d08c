import { type Quantity } from './quantity.ts';
import { textBehindNumber } from './read-number.ts';
import { readUnit } from './read-unit.ts';
import { type UnitSource } from './types.ts';
import { unitInHeader } from './unit-in-header.ts';
import { UNITS_OF, type Unit } from './units.ts';

/** A unit with the place where it was read; null when the file does not say. */
export interface UnitFound {
  unit: Unit | null;
  from: UnitSource | null;
  /** What stands behind each value, to be skipped. */
  suffix: string;
}

export interface ColumnFacts {
  quantity: Quantity;
  header: string;
  /** The header names the channel by its number in SAE J1979. */
  byPid: boolean;
  unitRowCell: string;
  /** Some filled cells of the column. */
  cells: readonly string[];
  answered: Unit | undefined;
}

const PID_UNIT: Readonly<Record<Quantity, Unit>> = {
  coolant: '°C',
  intake: '°C',
  ambient: '°C',
  speed: 'km/h',
  rpm: '1/min',
  load: '%',
  airFlow: 'g/s',
};

/** Looks for the unit in what the person said, the header, the unit row, behind the values, and the standard of a numbered channel. Never guesses. */
export function unitOfColumn({ quantity, header, byPid, unitRowCell, cells, answered }: ColumnFacts): UnitFound {
  const suffix = commonSuffix(cells);
  if (answered) return { unit: answered, from: 'your answer', suffix };
  const beside = suffix === '' ? null : readUnit(suffix, quantity);
  if (beside) return { unit: beside, from: 'beside each value', suffix };
  const inRow = unitRowCell === '' ? null : readUnit(unitRowCell, quantity);
  if (inRow) return { unit: inRow, from: 'unit row', suffix };
  const inHeader = unitInHeader(header, quantity);
  if (inHeader) return { unit: inHeader, from: 'header', suffix };
  if (byPid) return { unit: PID_UNIT[quantity], from: 'PID standard', suffix };
  return noneNeeded(quantity, suffix);
}

/** Engine speed and load come in one unit only. */
function noneNeeded(quantity: Quantity, suffix: string): UnitFound {
  const [only, ...others] = UNITS_OF[quantity];
  return only !== undefined && others.length === 0 ? { unit: only, from: 'none needed', suffix } : { unit: null, from: null, suffix };
}

function commonSuffix(cells: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const cell of cells) {
    const behind = textBehindNumber(cell);
    if (behind !== null) counts.set(behind, (counts.get(behind) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([, left], [, right]) => right - left);
  return most?.[0] ?? '';
}
