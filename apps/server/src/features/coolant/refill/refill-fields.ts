import type { BenchContext } from '../bench-context.ts';
import type { BenchField, Standing } from '../form/bench-field.ts';
import type { FieldGroup } from '../form/field-group.ts';
import { glycolField } from '../form/glycol-field.ts';
import type { KnownFigures } from './known.ts';
import { boilingFields } from './boiling-fields.ts';
import { productFields } from './product-fields.ts';
import { aimFields, staysFields } from './strength-fields.ts';

const VOLUME = { kind: 'figure', quantity: 'volume', least: 0, most: 500 } as const;

function volumeFields({ figures, choices }: KnownFigures): readonly BenchField[] {
  const { holds, missing, out, kept } = figures;
  const none: Standing<number> = { value: 0, how: 'assumed', said: 'Assumed: level at the mark.' };
  return [
    glycolField(choices['glycol']),
    {
      ...VOLUME,
      name: 'holds',
      isHalf: true,
      label: 'System holds',
      holds: 'A system holds',
      least: 0.1,
      ...(holds ? { standing: holds } : {}),
    },
    {
      kind: 'choice',
      name: 'kind',
      isHalf: true,
      label: 'That figure is',
      options: [
        { value: 'dry-fill', label: 'Dry system' },
        { value: 'service-refill', label: 'Usual refill' },
      ],
      standing: choices['kind'] ?? { value: 'dry-fill', how: 'assumed', said: 'Assumed.' },
    },
    {
      ...VOLUME,
      name: 'missing',
      isHalf: true,
      label: 'Missing on arrival',
      holds: 'What was missing lies between',
      standing: missing ?? none,
    },
    {
      ...VOLUME,
      name: 'out',
      isHalf: true,
      label: 'Measured out',
      holds: 'What came out lies between',
      hint: 'Empty: the system is dry.',
      ...(out ? { standing: out } : {}),
    },
    {
      ...VOLUME,
      name: 'kept',
      isHalf: true,
      label: 'Goes back in',
      holds: 'What goes back in lies between',
      standing: kept ?? { value: 0, how: 'assumed', said: 'Assumed: none was kept.' },
    },
  ];
}

function jugFields({ workshop }: BenchContext): readonly BenchField[] {
  const said = 'As set for the workshop.';
  return [
    {
      ...VOLUME,
      name: 'jug',
      isHalf: true,
      label: 'Jug holds',
      holds: 'A jug holds',
      least: 0.1,
      most: 50,
      standing: { value: workshop.jugMl / 1000, how: 'assumed', said },
    },
    {
      kind: 'figure',
      quantity: 'mark',
      name: 'mark',
      isHalf: true,
      label: 'Marks every',
      holds: 'Marks lie apart by',
      least: 1,
      most: 5000,
      standing: { value: workshop.jugMarkMl, how: 'assumed', said },
    },
  ];
}

/** The whole form: what is asked of every refill open, what the settings answer folded. */
export function refillGroups(context: BenchContext, known: KnownFigures): readonly FieldGroup[] {
  return [
    { title: '', isFolded: false, fields: volumeFields(known) },
    { title: 'What stays in', isFolded: false, fields: staysFields(known) },
    { title: 'What is poured in', isFolded: false, fields: productFields(context, known) },
    { title: 'What it shall stand', isFolded: false, fields: aimFields(context) },
    { title: 'Jug', isFolded: true, fields: jugFields(context) },
    { title: 'Cap, height and heat', isFolded: true, fields: boilingFields(context, known.figures) },
  ];
}
