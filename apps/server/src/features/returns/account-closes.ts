import { UNIT_PLACE_WORDS, UNIT_PLACES, type UnitPlace } from '#libs/unit-life';

export interface UnitCounts {
  made: number;
  at: ReadonlyMap<UnitPlace, number>;
  moves: readonly { from: UnitPlace; to: UnitPlace; units: number }[];
}

/**
 * Whether every unit is somewhere, and just there: all that were made are the sum over the places, and each place holds what
 * came into it less what left it.
 *
 * @returns the sum in words, and what is wrong with it, if anything
 * @example accountCloses({ made: 3, at: new Map([['fitted', 1], ['set-aside', 2]]), moves })
 * // { isClosed: true, words: '3 units = 2 set aside + 1 fitted.' }
 */
export function accountCloses({ made, at, moves }: UnitCounts): { isClosed: boolean; words: string } {
  const parts = UNIT_PLACES.map((place) => ({ place, units: at.get(place) ?? 0, byMoves: byMoves(place, { made, moves }) }));
  const sum = parts.reduce((total, { units }) => total + units, 0);
  const wrong = parts.filter(({ units, byMoves: moved }) => units !== moved);
  const shown = parts.filter(({ units }) => units > 0).map(({ place, units }) => `${units} ${UNIT_PLACE_WORDS[place].toLowerCase()}`);
  const isClosed = sum === made && wrong.length === 0;
  const line = `${made} ${made === 1 ? 'unit' : 'units'} = ${shown.length === 0 ? '0' : shown.join(' + ')}.`;
  const faults = wrong.map(({ place, units, byMoves: moved }) => `${UNIT_PLACE_WORDS[place]}: ${units} there, ${moved} by their moves.`);
  return { isClosed, words: [line, ...faults].join(' ') };
}

/** Every unit begins as expected. */
function byMoves(place: UnitPlace, { made, moves }: Pick<UnitCounts, 'made' | 'moves'>): number {
  const begun = place === 'expected' ? made : 0;
  return moves.reduce((sum, { from, to, units }) => sum + (to === place ? units : 0) - (from === place ? units : 0), begun);
}
