import { describe, expect, it } from '@jest/globals';
import type { InvoiceLine } from '#libs/invoicing';
import { creditItems } from './credit-items.ts';

const line = (id: string, name: string): InvoiceLine => ({
  id,
  kind: 'part',
  name,
  quantity: '3',
  unit: 'H87',
  unitPrice: '10',
  vatCategory: 'S',
  vatRate: '20',
  net: '30.00',
});

describe('creditItems', () => {
  it('takes what was typed and remembers its row', () => {
    const typed = { lineIds: ['1', '2', '3'], quantities: ['', '2', '0'], amounts: ['5.00', '', ''] };
    expect(creditItems(typed, [line('1', 'Hose'), line('2', 'Clip'), line('3', 'Cap')])).toEqual([
      { row: 0, field: 'amounts', item: { kind: 'amount', lineId: '1', net: '5.00', words: 'Off “Hose”' } },
      { row: 1, field: 'quantities', item: { kind: 'quantity', lineId: '2', quantity: '2' } },
    ]);
  });
});
