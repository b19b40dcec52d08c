import { type UnnumberedLine } from './drafted.ts';
import { type WasteFact } from './job-work.ts';

/** The waste charge, with the note in the waste book that shows where the coolant went. */
export function wasteLines(facts: readonly WasteFact[]): UnnumberedLine[] {
  return facts.map(({ words, drumNote, charge, vatCategory, vatRate }) => ({
    kind: 'waste',
    name: drumNote === undefined ? words : `${words}, drum note ${drumNote}`,
    ...(charge.kind === 'fixed'
      ? { quantity: '1', unit: 'C62', unitPrice: charge.price }
      : { quantity: charge.volumeL, unit: 'LTR', unitPrice: charge.pricePerL }),
    vatCategory,
    vatRate,
  }));
}
