/** Where the heat input was read: air flow and load follow the fuel burnt, road speed does roughly, time not at all. */
export type HeatSource = 'air flow' | 'load and engine speed' | 'road speed' | 'engine speed' | 'time';

/** A log on even steps of time, so that sums over it are sums over time. */
export interface Grid {
  stepS: number;
  size: number;
  /** Time of the first reading on the log's own clock. */
  startS: number;
  timeS: Float64Array;
  coolantC: Float64Array;
  /** Averaged over 25 s: whole degrees turn into a curve. */
  smoothC: Float64Array;
  speedKmh: Float64Array | null;
  rpm: Float64Array | null;
  intakeC: Float64Array | null;
  ambientC: Float64Array | null;
  heat: Float64Array;
  heatFrom: HeatSource;
  /** 1 while the engine turns. */
  running: Float64Array;
  /** 1 where nothing was logged for a while and the curve is only bridged. */
  bridged: Uint8Array;
  longestGapS: number;
  medianIntervalS: number;
  durationS: number;
}
