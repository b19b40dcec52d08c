import { type ConformanceVerdict } from '../conformance/conformance.types.ts';

/** A category such as 'o-ring' or true, or a number in the feature's unit. */
export type FeatureValue = string | number | boolean;

/** What a mismatch means: *sealing* excludes the variant, *function* counts against it, *advisory* is only shown. */
export type Criticality = 'sealing' | 'function' | 'advisory';

export interface ComparisonFeature {
  readonly key: string;
  readonly kind: 'category' | 'number';
  readonly criticality: Criticality;
  /** Numbers: how far a part may deviate from its stated figure. Default 0. */
  readonly tolerance?: number | undefined;
  /** Categories: how often one is taken for another. Default 0.02 (common practice, no source). */
  readonly misreadingRate?: number | undefined;
  /** Minutes that one reading takes. Default 1. */
  readonly minutes?: number | undefined;
  /** Numbers: the figures that such a part can have at all. Default: the candidates' range, widened. */
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  /** Categories: all there are. Default: those seen, and one more. */
  readonly values?: readonly FeatureValue[] | undefined;
  /** Numbers: u of the best instrument in the shop, used to value the next reading. Default 0. */
  readonly standardUncertainty?: number | undefined;
}

export interface ComparisonCandidate {
  readonly id: string;
  /** Weight before any reading, on any scale; missing means an equal share. */
  readonly prior?: number | undefined;
  /** What the variant is stated to have; a feature left out or null is not stated. */
  readonly values: Readonly<Record<string, FeatureValue | null | undefined>>;
}

export interface ComparisonReading {
  readonly key: string;
  /** null: could not be read. */
  readonly value: FeatureValue | null;
  /** u of the instrument used; left out or 0 for figures that are read exactly, such as a stamp. */
  readonly standardUncertainty?: number | undefined;
  /** Where: removed part, recess. Readings of one place are of one object and are pooled. */
  readonly measuredAt?: string | undefined;
}

export interface ComparisonQuestion {
  readonly features: readonly ComparisonFeature[];
  /** Probability before any reading that none of the candidates is right. Default 0.05. */
  readonly nonePrior?: number | undefined;
  /** Probability at which the choice is made. Default 0.95. */
  readonly threshold?: number | undefined;
  readonly candidates: readonly ComparisonCandidate[];
  readonly readings: readonly ComparisonReading[];
}

/** Why a feature says nothing about a variant. */
export type FindingNote = 'not-read' | 'could-not-be-read' | 'not-stated';

/** What one feature says about one variant. */
export interface FeatureFinding {
  readonly key: string;
  readonly verdict: ConformanceVerdict;
  /** Natural logarithm of the likelihood of the readings; 0 without any, null when they are impossible. */
  readonly logLikelihood: number | null;
  /** How strongly the readings speak for this variant rather than for *none of these*, in bits; null when impossible. */
  readonly weightBits: number | null;
  readonly note?: FindingNote;
}

export interface RankedCandidate {
  readonly id: string;
  readonly probability: number;
  /** Together with the candidates that no reading can part from it. */
  readonly groupProbability: number;
  /** *fits*: nothing critical is open or wrong. *excluded*: a sealing feature does not conform. *open*: neither. */
  readonly verdict: 'fits' | 'excluded' | 'open';
  readonly features: readonly FeatureFinding[];
}

export interface NextReading {
  readonly key: string;
  readonly expectedInformationBits: number;
  readonly minutes: number;
  readonly bitsPerMinute: number;
  /** The feature was read already, with a coarser instrument than the best in the shop. */
  readonly again?: true;
}

export interface ComparisonAnswer {
  /** Most probable first; equally probable ones in the order given. */
  readonly ranking: readonly RankedCandidate[];
  readonly noneProbability: number;
  /** The reading that promises most information per minute; left out when the choice is settled or nothing is left to read. */
  readonly nextReading?: NextReading;
  /** Groups of candidates with the same figures in every feature: the same part under several numbers. */
  readonly sameAs: readonly (readonly string[])[];
  /** Whether the leader has reached the threshold with no sealing feature open. */
  readonly settled: boolean;
  /** Sealing features of the leader that are still open. */
  readonly openFeatures: readonly string[];
  readonly warnings: readonly string[];
}
