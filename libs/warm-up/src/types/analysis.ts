import { type HeatSource } from '../grid/grid.ts';

export type Verdict = 'normal' | 'opens-early' | 'stuck-open' | 'stuck-closed' | 'leaks' | 'doubtful-data' | 'not-enough';

/** A point of a curve, on the log's own clock. */
export interface CurvePoint {
  timeS: number;
  tempC: number;
}

/** The bend where the climb ends, with the ranges in which it may as well lie. */
export interface Knee {
  timeS: number;
  tempC: number;
  interval: { lowC: number; highC: number; fromS: number; toS: number };
  /** How many times worse a curve without a bend fits. */
  sharpness: number;
}

export interface FittedLine {
  /** What the line was fitted against besides time. */
  against: HeatSource;
  points: CurvePoint[];
}

/** Pace of warming or cooling near the level, slow and quick driving apart. */
export interface FallWithSpeed {
  slowCPerMin: number;
  fastCPerMin: number;
  /** It cools on the road and warms in traffic, as through an open radiator. */
  falls: boolean;
}

/** Rises and falls at standstill that only an electric fan makes. */
export interface FanCycling {
  cycles: number;
  highC: number;
  lowC: number;
}

export interface HeatInput {
  from: HeatSource;
  meanSpeedKmh: number | null;
  /** Share of the time at standstill with the engine running. */
  stationaryShare: number | null;
  drivingMinutes: number | null;
  /** Share of the heat (by the channel used) that came in while driving. */
  drivingHeatShare: number | null;
}

export interface YardstickCondition {
  condition: string;
  /** Null where the log can't tell. */
  met: boolean | null;
}

/** Within 11 °C (20 °F) of the nominal temperature, as 13 CCR 1968.2 (e)(10) words it; shown beside the verdict, it is not the verdict. */
export interface Yardstick {
  nominalC: number;
  thresholdC: number;
  within11C: boolean;
  reachedAfterS: number | null;
  conditions: YardstickCondition[];
  conditionsMet: boolean;
}

export interface Cleaned {
  samples: number;
  used: number;
  dropped: { reason: string; count: number }[];
  longestGapS: number;
}

/** The answer to one log. Times are on the log's own clock, durations from its first reading. */
export interface WarmUpAnalysis {
  verdict: Verdict;
  confidence: number;
  openingC: { estimate: number; low: number; high: number } | null;
  firstPeakC: number | null;
  plateauC: number | null;
  coldStart: boolean | null;
  warmUpRateCPerMin: number | null;
  reasons: string[];
  /** What the curve does, in one sentence, without a judgement. */
  behaviour: string;
  knee: Knee | null;
  fit: FittedLine | null;
  timeTo80S: number | null;
  fallWithSpeed: FallWithSpeed | null;
  fanCycling: FanCycling | null;
  heatInput: HeatInput;
  yardstick: Yardstick | null;
  airC: number | null;
  startC: number | null;
  highestC: number | null;
  advice: string[];
  cautions: string[];
  cleaned: Cleaned;
}
