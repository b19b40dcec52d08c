import { type Evidence } from './evidence.types.ts';
import { slipKeys } from './slip-keys.ts';

/** Columns by what they can be found by. */
export interface ColumnIndex {
  readonly byReference: ReadonlyMap<string, readonly number[]>;
  readonly byReferenceSlip: ReadonlyMap<string, readonly number[]>;
  readonly byPart: ReadonlyMap<string, readonly number[]>;
  readonly byPartSlip: ReadonlyMap<string, readonly number[]>;
  readonly byHundredths: ReadonlyMap<number, readonly number[]>;
}

/**
 * Indexes one side of a matching, so that a line meets only what it shares something with.
 *
 * @param columns - the side to be found
 */
export function columnIndex(columns: readonly Evidence[]): ColumnIndex {
  return {
    byReference: indexBy(columns, ({ references }) => references),
    byReferenceSlip: indexBy(columns, ({ references }) => references.flatMap(slipKeys)),
    byPart: indexBy(columns, ({ parts }) => parts),
    byPartSlip: indexBy(columns, ({ parts }) => parts.flatMap(slipKeys)),
    byHundredths: indexBy(columns, ({ hundredths }) => [hundredths]),
  };
}

function indexBy<Key>(columns: readonly Evidence[], keysOf: (evidence: Evidence) => readonly Key[]): Map<Key, number[]> {
  const index = new Map<Key, number[]>();
  for (const [column, evidence] of columns.entries()) {
    for (const key of new Set(keysOf(evidence))) {
      const found = index.get(key);
      if (found === undefined) index.set(key, [column]);
      else found.push(column);
    }
  }
  return index;
}
