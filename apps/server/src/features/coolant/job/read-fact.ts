import { METRIC_UNITS } from '#libs/units';
import { dayColumn } from '../../../web/dates.ts';
import { badFact } from '../coolant.errors.ts';
import type { VehicleFactDto } from '../dto/vehicle-fact.dto.ts';
import type { Quantity } from '../form/bench-field.ts';
import { readFigure } from '../form/read-figure.ts';
import { measureOf } from '../units/measure.ts';
import { unitsOfMark } from '../units/unit-mark.ts';

export interface ReadFact {
  readonly figure: number | null;
  readonly unit: string;
  readonly words: string;
}

interface Bounds {
  readonly quantity: Quantity;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly words: string;
}

const BOUNDS: Readonly<Record<'capacity' | 'cap' | 'strength' | 'freezing-point', Bounds>> = {
  capacity: { quantity: 'volume', unit: 'L', least: 0.1, most: 500, words: 'A system holds 0.1 to 500 L.' },
  cap: { quantity: 'pressure', unit: 'kPa', least: 0, most: 300, words: 'A cap holds 0 to 300 kPa.' },
  strength: { quantity: 'percent', unit: '%', least: 0, most: 60, words: 'A strength lies between 0 and 60 % of pure glycol.' },
  'freezing-point': {
    quantity: 'temperature',
    unit: '°C',
    least: -60,
    most: 0,
    words: 'A freezing point lies between −60 and 0 °C: type the minus sign.',
  },
};

function readNumber(key: keyof typeof BOUNDS, { figure, in: mark = '' }: VehicleFactDto): number {
  const { quantity, least, most, words } = BOUNDS[key];
  const typed = readFigure(figure);
  if (typed === undefined) throw badFact('figure', 'Type the figure in digits, such as 6.2.');
  const value = measureOf(quantity, unitsOfMark(mark, METRIC_UNITS)).typed(typed);
  if (value < least || value > most) throw badFact('figure', words);
  return value;
}

/** What was stated, in the units of the record. @throws bad-fact beside the field that needs another look. */
export function readFact(input: VehicleFactDto): ReadFact {
  const { key, capacityKind, factGlycol, technology, changedOn } = input;
  switch (key) {
    case 'capacity':
      return { figure: readNumber(key, input), unit: 'L', words: capacityKind ?? '' };
    case 'cap':
    case 'strength':
    case 'freezing-point':
      return { figure: readNumber(key, input), unit: BOUNDS[key].unit, words: '' };
    case 'glycol':
      if (factGlycol === undefined) throw badFact('factGlycol', 'Choose the glycol from the list.');
      return { figure: null, unit: '', words: factGlycol };
    case 'technology':
      if (technology === undefined) throw badFact('technology', 'Choose the technology from the list.');
      return { figure: null, unit: '', words: technology };
    case 'coolant-changed':
      if (dayColumn(changedOn) === undefined) throw badFact('changedOn', 'Give a day that exists, such as 2026-03-31.');
      return { figure: null, unit: '', words: changedOn };
  }
}
