import { type WaitKind } from './card-state.ts';

export const WAIT_KINDS: readonly WaitKind[] = ['yes', 'part', 'cold', 'bay', 'person', 'customer', 'outside-firm'];

export const WAIT_WORDS: Readonly<Record<WaitKind, string>> = {
  yes: 'Waiting for a yes',
  part: 'Waiting for a part',
  cold: 'Waiting until it is cold',
  bay: 'Waiting for a bay',
  person: 'Waiting for a person',
  customer: 'Waiting for the customer',
  'outside-firm': 'Waiting for an outside firm',
};
