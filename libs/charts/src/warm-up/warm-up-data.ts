/** One reading of a log. */
export interface WarmUpSample {
  readonly minute: number;
  readonly tempC: number;
  readonly speedKmh?: number | null;
}

/** Where the curve bends, with what is known of it. */
export interface WarmUpKnee {
  readonly minute: number;
  readonly tempC: number;
  /** Half of the interval: the bend lies within ± this. */
  readonly halfWidthC: number;
  /** What bends there; default 'thermostat opens', which only plain wax does at one temperature. */
  readonly words?: string;
}

/** One warm-up from a start. */
export interface WarmUpLog {
  /** Beside the curve, such as 'After, 9 June'. */
  readonly label: string;
  readonly samples: readonly WarmUpSample[];
  /** Corners of the fitted line. */
  readonly fit?: readonly { readonly minute: number; readonly tempC: number }[];
  readonly knee?: WarmUpKnee | null;
}

/** Two logs to lay on one another. */
export interface WarmUpData {
  readonly before: WarmUpLog | null;
  readonly after: WarmUpLog | null;
  /** The opening temperature on the part; null draws no band. */
  readonly nominalC: number | null;
  /** Half of the band round it. Default 11 °C, that is 20 °F: 13 CCR §1968.2(e)(10). */
  readonly bandHalfWidthC?: number;
  /** Default true; drawn only where a log has speeds. */
  readonly hasSpeed?: boolean;
  /** Total height in px; without it the drawing chooses. */
  readonly heightPx?: number;
}

/** Default of `bandHalfWidthC`. */
export const BAND_HALF_WIDTH_C = 11;
