import { applyMarkup } from '#libs/money';
import { type NotBilled, type UnnumberedLine } from './drafted.ts';
import { type PartFact } from './job-work.ts';

/** Parts fitted or sold, at their set price or cost with mark-up. Variants that were only compared are never billed. */
export function partLines(facts: readonly PartFact[]): { lines: UnnumberedLine[]; notBilled: NotBilled[] } {
  return {
    lines: facts.filter((fact) => fact.place !== 'elsewhere').map(lineOf),
    notBilled: facts
      .filter((fact) => fact.place === 'elsewhere')
      .map((fact) => ({
        packageId: fact.packageId,
        what: fact.partNumber === undefined ? fact.name : `${fact.name} ${fact.partNumber}`,
        why: 'It was neither fitted nor sold.',
      })),
  };
}

function lineOf(fact: PartFact): UnnumberedLine {
  const { name, partNumber, quantity, unit, price, vatCategory, vatRate } = fact;
  return {
    kind: 'part',
    name,
    ...(partNumber === undefined ? {} : { itemNumber: partNumber }),
    quantity,
    unit,
    unitPrice: price.kind === 'set' ? price.unitPrice : applyMarkup(price.unitCost, price.rule),
    vatCategory,
    vatRate,
  };
}
