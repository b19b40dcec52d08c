import type { StrengthInput } from '#libs/coolant';
import type { BenchField, ReadForm } from '../form/bench-field.ts';
import { glycolField } from '../form/glycol-field.ts';

const FIELD_OF = { percent: 'percent', freezes: 'freezes', mass: 'mass' } as const;

/** The glycol and one way of saying how strong the mixture is. */
export function strengthFields(): readonly BenchField[] {
  const share = { kind: 'figure', least: 0, most: 100, holds: 'A share lies between' } as const;
  return [
    glycolField(),
    {
      kind: 'choice',
      name: 'by',
      label: 'Strength by',
      options: [
        { value: 'percent', label: '% of pure glycol, volume' },
        { value: 'freezes', label: 'Freezing point' },
        { value: 'mass', label: '% of pure glycol, mass' },
      ],
      standing: { value: 'percent', how: 'known', said: '' },
    },
    { ...share, name: 'percent', label: 'Pure glycol by volume', quantity: 'percent', when: 'when-by-percent' },
    {
      kind: 'figure',
      quantity: 'temperature',
      name: 'freezes',
      label: 'Freezes at',
      least: -60,
      most: 0,
      holds: 'A freezing point lies between',
      hint: 'Below zero with its minus sign.',
      when: 'when-by-freezes',
    },
    { ...share, name: 'mass', label: 'Pure glycol by mass', quantity: 'massPercent', when: 'when-by-mass' },
  ];
}

/** Which of the three fields is asked for. */
export const strengthField = ({ choices }: ReadForm): 'percent' | 'freezes' | 'mass' =>
  choices['by'] === 'freezes' || choices['by'] === 'mass' ? FIELD_OF[choices['by']] : FIELD_OF.percent;

/** The strength given, or undefined while its field is empty. */
export function strengthOf(form: ReadForm): StrengthInput | undefined {
  const field = strengthField(form);
  const value = form.figures[field];
  if (value === undefined) return undefined;
  switch (field) {
    case 'percent':
      return { volumePercent: value };
    case 'freezes':
      return { freezingPointC: value };
    case 'mass':
      return { massPercent: value };
  }
}

/** Where a refusal of the library goes on forms with these fields. */
export const STRENGTH_PROBLEMS: Readonly<Record<string, string>> = {
  volumePercent: 'percent',
  freezingPointC: 'freezes',
  massPercent: 'mass',
};
