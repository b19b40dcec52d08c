import type { BenchContext } from '../bench-context.ts';
import type { BenchField, Standing } from '../form/bench-field.ts';

/** Cap, height and heat. */
export function boilingFields(
  { workshop }: BenchContext,
  { cap, hottest }: Readonly<Record<string, Standing<number> | undefined>>,
): readonly BenchField[] {
  const pressure = { kind: 'figure', quantity: 'pressure', least: 0, most: 300, holds: 'A cap holds', isOptional: true } as const;
  return [
    { ...pressure, name: 'cap', isHalf: true, label: 'Cap, printed', hint: 'Above the air.', ...(cap ? { standing: cap } : {}) },
    { ...pressure, name: 'capHeld', isHalf: true, label: 'Cap, on the tester', hint: 'Beats the printed.' },
    {
      kind: 'figure',
      quantity: 'metres',
      name: 'altitude',
      isHalf: true,
      label: 'Height above the sea',
      holds: 'Roads lie at',
      least: -450,
      most: 6000,
      standing: { value: workshop.altitudeM, how: 'assumed', said: `As set for ${workshop.city || workshop.name}.` },
    },
    {
      kind: 'figure',
      quantity: 'temperature',
      name: 'hottest',
      isHalf: true,
      label: 'Hottest coolant',
      holds: 'Hot coolant lies at',
      least: 40,
      most: 150,
      isOptional: true,
      ...(hottest ? { standing: hottest } : {}),
    },
  ];
}
