import { describe, expect, it } from '@jest/globals';
import { METRIC_UNITS, US_UNITS } from '#libs/units';
import type { BenchField, FigureField } from './bench-field.ts';
import { readBenchForm } from './read-bench-form.ts';
import { keepFigures } from './standing-figures.ts';

const HOLDS: FigureField = {
  kind: 'figure',
  quantity: 'volume',
  name: 'holds',
  label: 'System holds',
  least: 0.1,
  most: 500,
  holds: 'A system holds',
};
const COLDEST: FigureField = {
  kind: 'figure',
  quantity: 'temperature',
  name: 'coldest',
  label: 'Coldest air',
  least: -60,
  most: 30,
  holds: 'The coldest air lies between',
  standing: { value: -22, how: 'assumed', said: 'As set.' },
};
const GLYCOL: BenchField = {
  kind: 'choice',
  name: 'glycol',
  label: 'Glycol',
  options: [
    { value: 'ethylene', label: 'Ethylene' },
    { value: 'propylene', label: 'Propylene' },
  ],
  standing: { value: 'ethylene', how: 'assumed', said: '' },
};
const FIELDS = [HOLDS, COLDEST, GLYCOL];

describe('readBenchForm', () => {
  it('lets what stands by default stand, and says that it is assumed', () => {
    const form = readBenchForm(FIELDS, {}, METRIC_UNITS);
    expect(form).toMatchObject({
      isAsked: false,
      figures: { coldest: -22 },
      states: { holds: 'empty', coldest: 'assumed', glycol: 'assumed' },
    });
    expect(form.texts).toMatchObject({ holds: '', coldest: '\u221222' });
  });

  it('takes a default that was sent back unchanged for the default', () => {
    expect(readBenchForm(FIELDS, { coldest: '\u221222' }, METRIC_UNITS).states['coldest']).toBe('assumed');
    expect(readBenchForm(FIELDS, { coldest: '-23' }, METRIC_UNITS)).toMatchObject({
      figures: { coldest: -23 },
      states: { coldest: 'typed' },
    });
  });

  it('falls back on what counted before, else on the default, else on nothing', () => {
    const before = keepFigures(readBenchForm(FIELDS, { holds: '7', coldest: '-30' }, METRIC_UNITS));
    const bad = readBenchForm(FIELDS, { holds: 'x', coldest: '999', was: before }, METRIC_UNITS);
    expect(bad.figures).toEqual({ holds: 7, coldest: -30 });
    expect(bad.errors).toEqual({
      holds: 'Type a figure in digits, such as 6.2. 7 L stays in force.',
      coldest: 'The coldest air lies between \u221260 to 30 °C. \u221230 °C stays in force.',
    });
    expect(readBenchForm(FIELDS, { holds: 'x', coldest: '999' }, METRIC_UNITS).figures).toEqual({ coldest: -22 });
  });

  it('keeps figures in °C and L whatever the person reads', () => {
    const form = readBenchForm(FIELDS, { holds: '4', coldest: '-40' }, US_UNITS);
    expect(form.figures['holds']).toBeCloseTo(3.785411784, 12);
    expect(form.figures['coldest']).toBe(-40);
    const other = readBenchForm(FIELDS, { holds: '4', coldest: '14', in: 'F-qt-psi' }, METRIC_UNITS);
    expect(other.figures['coldest']).toBeCloseTo(-10, 12);
    expect(other.texts).toMatchObject({ holds: '3.7854', coldest: '\u221210' });
  });

  it('knows no choice but those offered', () => {
    const form = readBenchForm(FIELDS, { glycol: 'brine' }, METRIC_UNITS);
    expect(form.choices['glycol']).toBe('ethylene');
    expect(form.errors['glycol']).toContain('Choose one from the list.');
  });
});
