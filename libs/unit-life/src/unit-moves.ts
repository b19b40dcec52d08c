import { type UnitPlace } from './unit-places.ts';

/** Every move a unit can make. Undoing one is another move of this table, never a deletion. */
export const UNIT_MOVES: readonly { readonly from: UnitPlace; readonly to: UnitPlace }[] = [
  { from: 'expected', to: 'called-off' },
  { from: 'expected', to: 'never-came' },
  { from: 'expected', to: 'set-aside' },

  { from: 'set-aside', to: 'fitted' },
  { from: 'set-aside', to: 'stocked' },
  { from: 'set-aside', to: 'sold' },
  { from: 'set-aside', to: 'to-return' },
  { from: 'set-aside', to: 'written-off' },

  { from: 'stocked', to: 'set-aside' },
  { from: 'stocked', to: 'sold' },
  { from: 'stocked', to: 'to-return' },
  { from: 'stocked', to: 'written-off' },

  { from: 'to-return', to: 'handed-over' },
  { from: 'to-return', to: 'set-aside' },
  { from: 'to-return', to: 'stocked' },
  { from: 'to-return', to: 'written-off' },

  { from: 'handed-over', to: 'gone-for-good' },
  { from: 'handed-over', to: 'set-aside' },
  { from: 'handed-over', to: 'written-off' },

  { from: 'fitted', to: 'taken-out' },
  { from: 'taken-out', to: 'to-return' },
  { from: 'taken-out', to: 'written-off' },
  { from: 'taken-out', to: 'set-aside' },

  { from: 'written-off', to: 'set-aside' },
];
