/** Where a unit can be. Always exactly one. */
export const UNIT_PLACES = [
  'expected',
  'called-off',
  'never-came',
  'set-aside',
  'fitted',
  'stocked',
  'sold',
  'to-return',
  'handed-over',
  'gone-for-good',
  'taken-out',
  'written-off',
] as const;

export type UnitPlace = (typeof UNIT_PLACES)[number];

export const UNIT_PLACE_WORDS: Readonly<Record<UnitPlace, string>> = {
  expected: 'Expected',
  'called-off': 'Called off',
  'never-came': 'Never came',
  'set-aside': 'Set aside',
  fitted: 'Fitted',
  stocked: 'Stocked',
  sold: 'Sold',
  'to-return': 'To return',
  'handed-over': 'Handed over',
  'gone-for-good': 'Gone for good',
  'taken-out': 'Taken out',
  'written-off': 'Written off',
};

/** Places where a unit's story is over: it gets there only with no money open. Written-off units can still be found again. */
export const END_PLACES: readonly UnitPlace[] = ['called-off', 'never-came', 'gone-for-good', 'written-off'];

export function isEndPlace(place: UnitPlace): boolean {
  return END_PLACES.includes(place);
}
