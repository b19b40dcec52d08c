import { type Evidence, type Instrument, type Step } from '#libs/checklist';
import { formatFigure } from '#libs/units';
import { formField } from '../../../web/form-field.ts';
import { platesView } from './card-form.ts';
import type { CardPage, PlatesView, ReadingView } from './card-view.types.ts';

/** The form of a step's own work. */
export const WORK = 'work';

const SIGNS = [
  { value: 'soft', label: 'Hose soft', note: 'no pressure' },
  { value: 'hard', label: 'Hose hard', note: 'pressure' },
  { value: 'none-shown', label: 'Gauge at zero', note: 'hose hidden' },
  { value: 'unsure', label: 'Can’t tell' },
];

const SIDES = [
  { value: 'below', label: 'Below it' },
  { value: 'at', label: 'At the mark' },
  { value: 'above', label: 'Above it' },
  { value: 'empty', label: 'Tank empty' },
];

/** The large figure with its keys, for the kinds of evidence that are one figure; null for the others. */
export function readingForm(page: CardPage, { evidence }: Step): ReadingView | null {
  switch (evidence.kind) {
    case 'cold-reading':
      return coldForm(page, evidence);
    case 'reading':
      return {
        ...figureOf(page, { name: 'value', label: 'Reading', unit: evidence.unit, isLong: evidence.range.high > 9999 }),
        plates: evidence.instruments.length === 0 ? [] : [instrumentPlates(page, evidence.instruments, evidence.unit)],
        doubt: evidence.range.high <= 0 ? 'below zero' : '',
      };
    case 'litres':
      return {
        ...figureOf(page, { name: 'litres', label: 'Litres', unit: 'L', isLong: false }),
        plates: [aboutPlates(page)],
      };
    case 'level':
      return {
        ...figureOf(page, { name: 'belowMarkMl', label: 'Millilitres from the cold mark', unit: 'mL', isLong: true }),
        plates: [platesView(page, WORK, { legend: 'Against the cold mark', name: 'side', bare: true, required: true, options: SIDES })],
        doubt: 'from the mark',
      };
    case 'tick':
    case 'choice':
    case 'list':
    case 'count':
    case 'variant':
    case 'torque':
    case 'jugs':
    case 'timer':
      return null;
  }
}

function figureOf(
  page: CardPage,
  { name, label, unit, isLong }: { name: string; label: string; unit: string; isLong: boolean },
): ReadingView {
  const field = { ...formField(page.formState(WORK), { name, label, inputmode: 'decimal' }), id: `${WORK}-${name}` };
  return { field, unit, isLong, doubt: '', plates: [], below: null, instruments: '' };
}

function coldForm(page: CardPage, { instruments, places }: Extract<Evidence, { kind: 'cold-reading' }>): ReadingView {
  const told = instruments.map(({ key, expandedU, method }) => [key, { expandedU, method }] as const);
  const metal = places.filter(({ bareMetal }) => bareMetal).map(({ key }) => key);
  return {
    ...figureOf(page, { name: 'tempC', label: 'Temperature', unit: '°C', isLong: false }),
    plates: [instrumentPlates(page, instruments, 'K')],
    below: {
      field: {
        ...formField(page.formState(WORK), {
          name: 'place',
          label: 'Where it was measured',
          required: true,
          options: [{ value: '', label: 'Where?' }, ...places.map(({ key, words }) => ({ value: key, label: words }))],
        }),
        id: `${WORK}-place`,
      },
      plates: platesView(page, WORK, { legend: 'Pressure', name: 'signs', bare: true, required: true, options: SIGNS }),
    },
    instruments: JSON.stringify({ instruments: Object.fromEntries(told), bareMetal: metal }),
  };
}

function instrumentPlates(page: CardPage, instruments: readonly Instrument[], unit: string): PlatesView {
  return platesView(page, WORK, {
    legend: 'Instrument',
    name: 'instrument',
    bare: true,
    required: true,
    options: instruments.map(({ key, words, expandedU }) => ({
      value: key,
      label: words,
      note: `± ${formatFigure(expandedU, 1)} ${unit === '°C' ? 'K' : unit}`,
    })),
  });
}

function aboutPlates(page: CardPage): PlatesView {
  return platesView(page, WORK, {
    legend: 'How sure',
    name: 'about',
    many: true,
    bare: true,
    options: [{ value: '1', label: 'About', note: 'judged by eye: widens the tolerance' }],
  });
}
