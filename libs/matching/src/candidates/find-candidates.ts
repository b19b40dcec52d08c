import { MatchingInputError } from '../matching-input-error.ts';
import { columnIndex, type ColumnIndex } from './column-index.ts';
import { AGREES, type CandidatePairs, type Evidence, type MatchTolerances, type ScorePoints } from './evidence.types.ts';
import { PairScorer } from './pair-scorer.ts';
import { slipKeys } from './slip-keys.ts';

/** What fits in memory and in a person's patience: two thousand lines that all look like two thousand units. */
const MOST_PAIRS = 5_000_000;
const EXACT = AGREES.reference | AGREES.part;

/** References and part numbers that exist, of columns that are not to be found this time too. */
export interface KnownNumbers {
  readonly references: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
}

export interface CandidateSettings {
  readonly points: ScorePoints;
  readonly tolerances: MatchTolerances;
  readonly known: KnownNumbers;
  /** Whether an equal amount makes a candidate although the row has a reference or a part number. */
  readonly amountAlone: boolean;
  /** Whether a reference or part number has to agree exactly. */
  readonly exactOnly: boolean;
}

/**
 * Finds and scores the pairs that may belong together. A pair is looked at only when a reference or a part number is the same
 * or one slip apart, or when the amount is the same and the row has neither.
 *
 * A number that exists is never taken for a slip of another: neighbours in a series differ by one digit. A row whose reference
 * exists is matched with nothing else.
 *
 * @param rows - lines
 * @param columns - units or documents
 * @param settings - points, tolerances and known numbers
 * @throws MatchingInputError `too-many` when too many rows and columns look alike
 */
export function findCandidates(rows: readonly Evidence[], columns: readonly Evidence[], settings: CandidateSettings): CandidatePairs {
  const index = columnIndex(columns);
  const start = new Int32Array(rows.length + 1);
  const column: number[] = [];
  const weight: number[] = [];
  const agreements: number[] = [];
  const found = new Uint8Array(columns.length);
  const scorer = new PairScorer(settings.points, settings.tolerances);
  for (const [position, row] of rows.entries()) {
    const touched = lookUp(row, index, { found, settings });
    const needed = row.references.some((reference) => settings.known.references.has(reference)) ? AGREES.reference : 0;
    for (const target of touched) {
      const other = columns[target];
      const bits = found[target] ?? 0;
      found[target] = 0;
      if (other === undefined || (bits & needed) !== needed) continue;
      scorer.judge(row, other, bits);
      const { score, agreement } = scorer;
      if (score <= settings.points.least || (settings.exactOnly && (bits & EXACT) === 0)) continue;
      column.push(target);
      weight.push(score - settings.points.least);
      agreements.push(agreement);
    }
    start[position + 1] = column.length;
    if (column.length > MOST_PAIRS) throw tooManyPairs();
  }
  const weights = {
    rowCount: rows.length,
    columnCount: columns.length,
    start,
    column: Int32Array.from(column),
    weight: Int32Array.from(weight),
  };
  return { weights, agreement: Uint8Array.from(agreements) };
}

/** The columns that share something with a row; what they share is left in `found`. */
function lookUp(
  row: Evidence,
  index: ColumnIndex,
  { found, settings }: { readonly found: Uint8Array; readonly settings: CandidateSettings },
): number[] {
  const { known, tolerances, amountAlone } = settings;
  const touched: number[] = [];
  const mark = (columns: readonly number[] | undefined, bit: number): void => {
    for (const column of columns ?? []) {
      if (found[column] === 0) touched.push(column);
      found[column] = (found[column] ?? 0) | bit;
    }
  };
  for (const reference of row.references) {
    mark(index.byReference.get(reference), AGREES.reference);
    if (known.references.has(reference)) continue;
    for (const key of slipKeys(reference)) mark(index.byReferenceSlip.get(key), AGREES.referenceNear);
  }
  for (const part of row.parts) {
    mark(index.byPart.get(part), AGREES.part);
    if (known.parts.has(part)) continue;
    for (const key of slipKeys(part)) mark(index.byPartSlip.get(key), AGREES.partNear);
  }
  if (amountAlone || (row.references.length === 0 && row.parts.length === 0)) {
    const reach = tolerances.hundredths;
    for (let off = -reach; off <= reach; off += 1) mark(index.byHundredths.get(row.hundredths + off), AGREES.amount);
  }
  return touched;
}

function tooManyPairs(): MatchingInputError {
  const message = 'Too many lines and returns look alike to be matched at once: match one supplier and a shorter time at a time.';
  return new MatchingInputError('too-many', [{ field: 'lines', message }]);
}
