import { type ConformanceVerdict } from '../conformance/conformance.types.ts';
import { type FindingNote } from './comparison.types.ts';

/** What one feature's readings say about one candidate, before it is put into the answer's form. */
export interface Score {
  readonly verdict: ConformanceVerdict;
  /** Natural logarithm; minus infinity when the readings are impossible. */
  readonly logLikelihood: number;
  readonly note?: FindingNote;
}

/** The scores of all candidates, in their order, and of *none of these*. */
export interface FeatureScores {
  readonly key: string;
  readonly scores: readonly Score[];
  readonly noneLogLikelihood: number;
}
