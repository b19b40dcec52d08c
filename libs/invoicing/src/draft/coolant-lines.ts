import { Decimal, plainDecimal, toDecimal } from '#libs/money';
import { type NotBilled, type UnnumberedLine } from './drafted.ts';
import { type CoolantFact, type ProductPour } from './job-work.ts';

/**
 * Coolant as product used, one line per product: the litres of concentrate and of water, never the litres of their mix.
 * The car's own coolant that went back in is not billed.
 */
export function coolantLines(facts: readonly CoolantFact[]): { lines: UnnumberedLine[]; notBilled: NotBilled[] } {
  return { lines: facts.flatMap(linesOf), notBilled: facts.flatMap(notBilledOf) };
}

function linesOf(fact: CoolantFact): UnnumberedLine[] {
  const poured = fact.pours.flatMap((pour) => (pour.kind === 'new' ? pour.products : []));
  return fact.products.flatMap((product): UnnumberedLine[] => {
    const usedL = sumOf(poured.filter((pour) => pour.productId === product.id));
    if (usedL.isZero()) return [];
    return [
      {
        kind: 'coolant',
        name: product.name,
        quantity: plainDecimal(usedL),
        unit: 'LTR',
        unitPrice: product.pricePerL,
        vatCategory: product.vatCategory,
        vatRate: product.vatRate,
      },
    ];
  });
}

function notBilledOf(fact: CoolantFact): NotBilled[] {
  const kept = sumOf(fact.pours.flatMap((pour) => (pour.kind === 'kept' ? [pour] : [])));
  const mixed = sumOf(fact.pours.flatMap((pour) => (pour.kind === 'mix' ? [pour] : [])));
  const { packageId } = fact;
  return [
    ...(kept.isZero()
      ? []
      : [{ packageId, what: `${plainDecimal(kept)} L of coolant`, why: "It is this car's own coolant, put back in." }]),
    ...(mixed.isZero()
      ? []
      : [
          {
            packageId,
            what: `${plainDecimal(mixed)} L of mix`,
            why: 'How much product is in it was not recorded. Enter concentrate and water apart; mix is not billed by the litre.',
          },
        ]),
  ];
}

function sumOf(pours: readonly Pick<ProductPour, 'volumeL'>[]): Decimal {
  return pours.reduce((sum, pour) => sum.plus(toDecimal(pour.volumeL)), new Decimal(0));
}
