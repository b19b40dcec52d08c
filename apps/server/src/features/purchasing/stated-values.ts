/** What was said of one feature of a variant, and by which way it is known. */
export interface Statement {
  id: string;
  feature: string;
  figure: number | null;
  words: string | null;
  provenance: string;
  saidAt: Date;
}

/** What a feature is taken to be, and what was said of it otherwise. */
export interface StatedValue {
  value: number | string;
  provenance: string;
  differing: { value: number | string; provenance: string }[];
}

/** A piece in the hand says more than its picture, and a picture more than a list. */
const RANK: readonly string[] = ['measured', 'photo', 'listing'];

const valueOf = ({ figure, words }: Statement): number | string => figure ?? words ?? '';

/**
 * What each feature is taken to be: the best way of knowing wins, then the newest. Those that differ stay beside it.
 *
 * @param statements not withdrawn, in any order
 * @example statedValues([{ feature: 'seal', words: 'o-ring', provenance: 'listing', … }]).get('seal')
 * // { value: 'o-ring', provenance: 'listing', differing: [] }
 */
export function statedValues(statements: readonly Statement[]): ReadonlyMap<string, StatedValue> {
  const ranked = [...statements].sort(
    (a, b) => RANK.indexOf(a.provenance) - RANK.indexOf(b.provenance) || b.saidAt.getTime() - a.saidAt.getTime(),
  );
  const values = new Map<string, StatedValue>();
  for (const statement of ranked) {
    const said = { value: valueOf(statement), provenance: statement.provenance };
    const taken = values.get(statement.feature);
    if (!taken) values.set(statement.feature, { ...said, differing: [] });
    else if (taken.value !== said.value) taken.differing.push(said);
  }
  return values;
}
