import type { AdditiveInput, ProductLimits } from '#libs/coolant';
import type { ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import type { ShelfProduct } from '../../coolant-shelf/coolant-shelf.service.ts';
import type { Asked } from './asked.ts';

/** What is poured in beside water. */
export interface Chosen {
  readonly additive: AdditiveInput;
  readonly limits?: ProductLimits;
  readonly name: string;
}

function ofShelf(product: ShelfProduct, form: ReadForm): Asked<Chosen> {
  const { label, minimumPercent, maximumPercent, name, glycol, isReadyMixed } = product;
  if (glycol !== glycolOf(form)) {
    return {
      ok: false,
      field: 'product',
      message: `${name} is made with ${glycol} glycol: change the glycol above, or take another product.`,
    };
  }
  if (isReadyMixed && !label) {
    return {
      ok: false,
      field: 'product',
      message: `${name} is ready-mixed, but its label’s freezing point is not on record: type it as a pair.`,
    };
  }
  const additive: AdditiveInput = label ? { label } : { isContentUnknown: true };
  return { ok: true, value: { additive, limits: { minimumPercent, maximumPercent }, name } };
}

/** The product that the form chooses, or which field still keeps it from being known. */
export function additiveOf(form: ReadForm, products: readonly ShelfProduct[]): Asked<Chosen> {
  const { figures, choices } = form;
  const choice = choices['product'] ?? 'unknown';
  const product = products.find(({ id }) => choice === `shelf-${id}`);
  if (product) return ofShelf(product, form);
  const { parts = 1, water = 1, labelFreezes, content } = figures;
  switch (choice) {
    case 'label': {
      if (labelFreezes === undefined) return { ok: false, field: 'labelFreezes' };
      const label = { partsProduct: parts, partsWater: water, freezingPointC: labelFreezes };
      return { ok: true, value: { additive: { label }, name: water === 0 ? 'ready-mixed' : 'product' } };
    }
    case 'volume':
    case 'mass': {
      if (content === undefined) return { ok: false, field: 'content' };
      const additive = choice === 'volume' ? { volumePercent: content } : { massPercent: content };
      return { ok: true, value: { additive, name: 'product' } };
    }
    default:
      return { ok: true, value: { additive: { isContentUnknown: true }, name: 'concentrate' } };
  }
}
