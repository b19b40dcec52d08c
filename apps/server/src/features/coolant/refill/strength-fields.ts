import type { BenchContext } from '../bench-context.ts';
import type { BenchField } from '../form/bench-field.ts';
import type { KnownFigures } from './known.ts';

const PERCENT = { kind: 'figure', quantity: 'percent', least: 0, most: 100, holds: 'A share lies between' } as const;
const FREEZES = {
  kind: 'figure',
  quantity: 'temperature',
  least: -60,
  most: 0,
  holds: 'The scale goes from',
  hint: 'Below zero with its minus sign.',
} as const;

/** How strong what stays in the block is, and how anybody knows. */
export function staysFields({ figures, choices }: KnownFigures): readonly BenchField[] {
  const { staysReading, staysPercent } = figures;
  return [
    {
      kind: 'choice',
      name: 'stays',
      label: 'Its strength',
      options: [
        { value: 'reading', label: 'Refractometer, °C or °F scale' },
        { value: 'percent', label: '% of pure glycol' },
        { value: 'product', label: '% of product, as its label' },
        { value: 'water', label: 'Not known: counted as water' },
      ],
      standing: choices['stays'] ?? { value: 'reading', how: 'known', said: '' },
    },
    {
      ...FREEZES,
      name: 'staysReading',
      isHalf: true,
      label: 'The scale shows',
      when: 'when-stays-reading',
      ...(staysReading ? { standing: staysReading } : {}),
    },
    {
      kind: 'choice',
      name: 'scale',
      isHalf: true,
      label: 'Scale made for',
      options: [
        { value: 'same', label: 'Same glycol' },
        { value: 'ethylene', label: 'Ethylene' },
        { value: 'propylene', label: 'Propylene' },
      ],
      standing: choices['scale'] ?? { value: 'same', how: 'assumed', said: 'Assumed: look at the instrument.' },
      when: 'when-stays-reading',
    },
    {
      ...PERCENT,
      name: 'staysPercent',
      label: 'Pure glycol in it',
      hint: '% by volume.',
      when: 'when-stays-percent',
      ...(staysPercent ? { standing: staysPercent } : {}),
    },
    { ...PERCENT, name: 'staysProduct', label: 'Product in it', hint: 'Of the product chosen below.', when: 'when-stays-product' },
  ];
}

/** What the mixture is aimed at. */
export function aimFields({ workshop }: BenchContext): readonly BenchField[] {
  const site = `As set for ${workshop.city || workshop.name}.`;
  return [
    {
      kind: 'choice',
      name: 'aim',
      label: 'Aim by',
      options: [
        { value: 'coldest', label: 'Coldest air and a margin' },
        { value: 'freezing', label: 'Freezing point' },
        { value: 'product', label: '% of product' },
        { value: 'glycol', label: '% of pure glycol' },
      ],
      standing: { value: 'coldest', how: 'known', said: '' },
    },
    {
      kind: 'figure',
      quantity: 'temperature',
      name: 'coldest',
      isHalf: true,
      label: 'Coldest air',
      least: -60,
      most: 30,
      holds: 'The coldest air lies between',
      standing: { value: workshop.coldestAirC, how: 'assumed', said: site },
      when: 'when-aim-coldest',
    },
    {
      kind: 'figure',
      quantity: 'difference',
      name: 'margin',
      isHalf: true,
      label: 'Margin below it',
      least: 0,
      most: 30,
      holds: 'A margin lies between',
      standing: { value: workshop.freezeMarginK, how: 'assumed', said: 'As set for the workshop.' },
      when: 'when-aim-coldest',
    },
    { ...FREEZES, name: 'aimFreezes', label: 'Shall not freeze above', when: 'when-aim-freezing' },
    { ...PERCENT, name: 'aimProduct', label: 'Product', hint: '50: half product, half water.', when: 'when-aim-product' },
    { ...PERCENT, name: 'aimGlycol', label: 'Pure glycol', hint: '% by volume.', when: 'when-aim-glycol' },
  ];
}
