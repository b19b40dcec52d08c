/** Why a thermostat is put into hot water: to show a fault of the old one, or to accept a new one. */
export type BenchTestPurpose = 'suspect' | 'acceptance';

export interface BenchTestQuestion {
  readonly purpose: BenchTestPurpose;
  /** Opening temperature on the stamp, in the catalogue or of the vehicle: never from this test. */
  readonly stampC: number;
  /** Boiling point of plain water at this altitude. */
  readonly boilingPointC: number;
  readonly readings: {
    /** First lift while heating; null when not seen or not noted. */
    readonly startC: number | null;
    /** Full lift reached. */
    readonly fullLiftC: number | null;
    /** Largest lift. */
    readonly liftMm: number | null;
    /** Quite shut again while cooling. */
    readonly closedC: number | null;
    /** Hottest the water got; tells 'never opened' from 'not noted'. */
    readonly hottestC?: number | null | undefined;
  };
  /** u of the thermometer, in °C. */
  readonly thermometerUncertaintyC: number;
  /** u of the lift gauge, in mm. */
  readonly liftUncertaintyMm: number;
  /** How fast the water was heated; left out when not noted. */
  readonly heatingCPerMin?: number | undefined;
  readonly limits?: Partial<BenchTestLimits> | undefined;
}

/** What a good thermostat keeps, relative to the stamp. The vehicle maker's figures go before these. */
export interface BenchTestLimits {
  /** Opening starts within stamp ± this. */
  readonly openingToleranceC: number;
  /** Full lift at the latest this far above the stamp. */
  readonly travelC: number;
  readonly leastLiftMm: number;
  /** Quite shut again at the latest this far below the stamp. */
  readonly closedBelowC: number;
}

export type BenchTestVerdict = 'conforms' | 'does-not-conform' | 'not-proven' | 'not-testable' | 'not-recorded';

export interface BenchTestFinding {
  readonly verdict: BenchTestVerdict;
  /** What was asked and what was found, in words. */
  readonly words: string;
}

export type BenchTestOutcome = 'faulty' | 'no-fault-shown' | 'accepted' | 'refused' | 'not-proven';

export interface BenchTestAnswer {
  readonly start: BenchTestFinding;
  readonly fullLift: BenchTestFinding;
  readonly lift: BenchTestFinding;
  readonly closing: BenchTestFinding;
  readonly outcome: BenchTestOutcome;
  /** What the test shows and what it doesn't, in a sentence or two. */
  readonly statement: string;
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
}
