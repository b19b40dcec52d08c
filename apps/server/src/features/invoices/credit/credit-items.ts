import type { CreditItem, InvoiceLine } from '#libs/invoicing';

interface TypedCredit {
  lineIds: readonly string[];
  quantities: readonly string[];
  amounts: readonly string[];
}

/** Fields of the form with the row that they belong to, in the order of the items made of them. */
export interface ChosenItem {
  row: number;
  field: 'quantities' | 'amounts';
  item: CreditItem;
}

const isGiven = (figure: string | undefined): figure is string => figure !== undefined && figure !== '' && Number(figure) !== 0;

/** What was chosen line by line: so many of it back, or money off it. */
export function creditItems({ lineIds, quantities, amounts }: TypedCredit, lines: readonly InvoiceLine[]): ChosenItem[] {
  return lineIds.flatMap((lineId, row): ChosenItem[] => {
    const quantity = quantities[row];
    const net = amounts[row];
    const name = lines.find(({ id }) => id === lineId)?.name ?? '';
    return [
      ...(isGiven(quantity) ? [{ row, field: 'quantities' as const, item: { kind: 'quantity' as const, lineId, quantity } }] : []),
      ...(isGiven(net) ? [{ row, field: 'amounts' as const, item: { kind: 'amount' as const, lineId, net, words: `Off “${name}”` } }] : []),
    ];
  });
}
