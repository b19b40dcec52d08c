import { type DebtKind } from '../template/template.ts';

export const DEBT_KINDS: readonly DebtKind[] = [
  'customer-money',
  'units-and-claims',
  'core-parts',
  'waste',
  'level-check',
  'after-log',
  'warranty-claim',
];

export const DEBT_WORDS: Readonly<Record<DebtKind, string>> = {
  'customer-money': "Customer's money",
  'units-and-claims': 'Parts to go back and claims on suppliers',
  'core-parts': 'Old parts owed for a core charge',
  waste: 'Waste not booked into the drum',
  'level-check': 'Coolant level when cold',
  'after-log': 'Warm-up log after the repair',
  'warranty-claim': 'Warranty claim',
};
