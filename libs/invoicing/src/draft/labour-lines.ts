import { toDecimal } from '#libs/money';
import { type NotBilled, type UnnumberedLine } from './drafted.ts';
import { type LabourFact } from './job-work.ts';

/** Labour as one line per piece of work: the menu price once, or hours worked × rate. No hours, no line. */
export function labourLines(facts: readonly LabourFact[]): { lines: UnnumberedLine[]; notBilled: NotBilled[] } {
  const isBilled = (fact: LabourFact): boolean => fact.charge.kind === 'menu' || !toDecimal(fact.charge.hours).isZero();
  return {
    lines: facts.filter(isBilled).map(lineOf),
    notBilled: facts
      .filter((fact) => !isBilled(fact))
      .map((fact) => ({ packageId: fact.packageId, what: fact.words, why: 'No hours are recorded for it.' })),
  };
}

function lineOf({ words, charge, vatCategory, vatRate }: LabourFact): UnnumberedLine {
  const figures =
    charge.kind === 'menu'
      ? { quantity: '1', unit: 'C62', unitPrice: charge.price }
      : { quantity: charge.hours, unit: 'HUR', unitPrice: charge.ratePerHour };
  return { kind: 'labour', name: words, ...figures, vatCategory, vatRate };
}
