import { FALLBACK_PRODUCT_MASS_PERCENT } from '#libs/coolant';
import type { BenchContext } from '../bench-context.ts';
import type { BenchField } from '../form/bench-field.ts';
import type { KnownFigures } from './known.ts';

const PARTS = { kind: 'figure', quantity: 'bare', least: 0, most: 100, decimals: 2 } as const;
const FROM_THE_LABEL = { how: 'assumed', said: 'As most labels say it.' } as const;

/** The product: one of the shelf, its label's pair, its stated content, or the pessimistic fallback. */
export function productFields({ products }: BenchContext, { choices }: KnownFigures): readonly BenchField[] {
  return [
    {
      kind: 'choice',
      name: 'product',
      label: 'Product',
      options: [
        ...products.map(({ id, name }) => ({ value: `shelf-${id}`, label: name })),
        { value: 'label', label: 'By its label’s pair' },
        { value: 'volume', label: 'By its glycol, % by volume' },
        { value: 'mass', label: 'By its glycol, % by mass' },
        { value: 'unknown', label: 'Concentrate, content not known' },
      ],
      standing: choices['product'] ?? {
        value: 'unknown',
        how: 'assumed',
        said: `Assumed: ${FALLBACK_PRODUCT_MASS_PERCENT} % by mass, a pessimistic figure. The label wins.`,
      },
    },
    {
      ...PARTS,
      name: 'parts',
      isHalf: true,
      label: 'Parts of product',
      holds: 'Parts lie between',
      least: 0.1,
      standing: { value: 1, ...FROM_THE_LABEL },
      when: 'when-product-label',
    },
    {
      ...PARTS,
      name: 'water',
      isHalf: true,
      label: 'to parts of water',
      holds: 'Parts lie between',
      hint: '0 for ready-mixed.',
      standing: { value: 1, ...FROM_THE_LABEL },
      when: 'when-product-label',
    },
    {
      kind: 'figure',
      quantity: 'temperature',
      name: 'labelFreezes',
      label: 'freeze at',
      least: -60,
      most: -1,
      holds: 'A label promises',
      hint: 'Below zero with its minus sign.',
      when: 'when-product-label',
    },
    {
      kind: 'figure',
      quantity: 'percent',
      name: 'content',
      label: 'Glycol in the product',
      least: 1,
      most: 100,
      holds: 'A product holds',
      when: 'when-product-content',
    },
  ];
}
