/** Whether a figure keeps its limits: shown, shown not to, or neither with this instrument. */
export type ConformanceVerdict = 'conforms' | 'does-not-conform' | 'not-proven';

export interface ConformanceQuestion {
  /** The stated figure, in any unit; the other figures in the same. */
  readonly nominal: number;
  /** Largest deviation either way that still counts as the stated figure. */
  readonly tolerance: number;
  readonly measured: number;
  /** u = U/2 for an instrument whose U is stated with k = 2; 0 for a figure that is read exactly, such as a stamp. */
  readonly standardUncertainty: number;
}

export interface ConformanceAnswer {
  readonly verdict: ConformanceVerdict;
  /** Probability that the true figure lies inside the limits. */
  readonly conformanceProbability: number;
  /** Readings from low to high prove conformance; null when no reading with this instrument could. */
  readonly acceptance: { readonly low: number; readonly high: number } | null;
}
