import { type Glycol, GLYCOL_NAME } from '#libs/coolant';
import type { ChoiceField, ReadForm, Standing } from './bench-field.ts';

const ASSUMED: Standing<string> = { value: 'ethylene', how: 'assumed', said: 'Assumed: the label says which.' };

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Which glycol it is about. */
export function glycolField(standing: Standing<string> = ASSUMED): ChoiceField {
  return {
    kind: 'choice',
    name: 'glycol',
    label: 'Glycol',
    options: (['ethylene', 'propylene'] as const).map((value) => ({ value, label: capital(GLYCOL_NAME[value]) })),
    standing,
  };
}

export const glycolOf = ({ choices }: ReadForm): Glycol => (choices['glycol'] === 'propylene' ? 'propylene' : 'ethylene');
