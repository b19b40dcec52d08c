import { fieldsOf, numberIn } from '../words/fields.ts';
import { type Read, refused, understood } from '../words/read.ts';
import { type EvidenceValue, type FillAmounts } from './evidence-value.ts';

const POURABLE_ML = { low: 0, high: 100_000, words: 'Amounts are in mL.' };

/** Product, water and kept coolant of one pour; what is left out is nothing. */
export function readFillAmounts(value: unknown): Read<FillAmounts> {
  const fields = fieldsOf(value);
  const product = numberIn(fields['productMl'] ?? 0, POURABLE_ML, 'Product');
  if (!product.ok) return product;
  const water = numberIn(fields['waterMl'] ?? 0, POURABLE_ML, 'Water');
  if (!water.ok) return water;
  const kept = numberIn(fields['keptMl'] ?? 0, POURABLE_ML, 'Kept coolant');
  if (!kept.ok) return kept;
  return understood({ productMl: product.value, waterMl: water.value, keptMl: kept.value });
}

/** A jug, or the whole fill when it did not come from jugs: never nothing at all. */
export function readFill(value: unknown): Read<EvidenceValue> {
  const amounts = readFillAmounts(value);
  if (!amounts.ok) return amounts;
  const { productMl, waterMl, keptMl } = amounts.value;
  if (productMl + waterMl + keptMl <= 0) return refused('Enter how much was poured: product, water or kept coolant, in mL.');
  return understood({ kind: 'fill', amounts: amounts.value, about: fieldsOf(value)['about'] === true });
}
