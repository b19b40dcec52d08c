import { describe, expect, it } from '@jest/globals';
import type { DraftLine } from '#libs/invoicing';
import { originsOf, withEdits } from './draft-edits.ts';
import type { LineEdit } from './job-bill.repository.ts';

const labour: DraftLine = {
  id: '1',
  kind: 'labour',
  name: 'Labour',
  quantity: '2',
  unit: 'HUR',
  unitPrice: '60',
  vatCategory: 'S',
  vatRate: '20',
};
const part: DraftLine = {
  id: '2',
  kind: 'part',
  name: 'Thermostat',
  itemNumber: 'NR-1',
  quantity: '1',
  unit: 'H87',
  unitPrice: '30',
  vatCategory: 'S',
  vatRate: '20',
};
const edit = (origin: string, change: Partial<LineEdit> = {}): LineEdit => ({
  id: 'x',
  origin,
  kind: 'labour',
  description: 'Labour, agreed',
  quantity: '1.5',
  unit: 'HUR',
  unitPrice: '60',
  vatCategory: 'S',
  vatRatePct: '20',
  discount: null,
  discountFor: '',
  changedWhy: 'agreed by phone',
  isRemoved: false,
  ...change,
});

describe('withEdits', () => {
  it('leaves a draft that nobody touched as it is', () => {
    expect(withEdits([labour, part], []).map(({ id, name }) => [id, name])).toEqual([
      ['1', 'Labour'],
      ['2', 'Thermostat'],
    ]);
  });

  it('replaces, removes and adds, and numbers anew', () => {
    const lines = withEdits(
      [labour, part],
      [edit('labour:Labour'), edit('part:NR-1', { isRemoved: true }), edit('typed:1', { description: 'Clip' })],
    );
    expect(lines.map(({ id, name, quantity, changedWhy }) => [id, name, quantity, changedWhy])).toEqual([
      ['1', 'Labour, agreed', '1.5', 'agreed by phone'],
      ['2', 'Clip', '1.5', 'agreed by phone'],
    ]);
  });

  it('takes a discount off the line, with its ground', () => {
    const [line] = withEdits([labour], [edit('labour:Labour', { discount: '5.00', discountFor: 'late promise' })]);
    expect(line?.allowances).toEqual([{ amount: '5.00', reason: 'late promise' }]);
  });

  it('bills nothing for a change whose line is gone', () => {
    expect(withEdits([labour], [edit('part:NR-1', { description: 'Thermostat, agreed' })]).map(({ name }) => name)).toEqual(['Labour']);
  });

  it('changes one of two lines of the same name', () => {
    expect(originsOf([part, part])).toEqual(['part:NR-1', 'part:NR-1#2']);
    const lines = withEdits([part, part], [edit('part:NR-1#2', { description: 'The second' })]);
    expect(lines.map(({ name }) => name)).toEqual(['Thermostat', 'The second']);
  });
});
