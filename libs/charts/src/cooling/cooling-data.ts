/** One temperature at a time. */
export interface CoolingPoint {
  /** Minutes since midnight of the first day; beyond 1440 is the next day. */
  readonly clockMin: number;
  readonly tempC: number;
}

/** A measured temperature with what the instrument may be off. */
export interface CoolingReading extends CoolingPoint {
  readonly uncertaintyC?: number;
}

/** One job's temperature over the clock. */
export interface CoolingCurveData {
  readonly readings: readonly CoolingReading[];
  /** What the cooling law expects; never a measurement. */
  readonly estimate: readonly CoolingPoint[];
  /** The most at which the system may be opened. */
  readonly limitC: number;
  readonly nowMin?: number;
}
