/** One reading of the engine in °C, km/h, 1/min, % and g/s; what was not logged is left out. */
export interface Sample {
  timeS: number;
  coolantC: number;
  speedKmh?: number;
  rpm?: number;
  loadPercent?: number;
  intakeC?: number;
  ambientC?: number;
  airFlowGps?: number;
}
