/**
 * A sound but slow engine, in degrees per minute and per second: what the slowest car we would still call healthy does. Heat at idle and
 * per km/h is below every healthy engine logged for this library (published logs warm by 3.5–5.7 °C/min at idle); the losses are a block
 * and a heater on full. Common practice has no table for this: the figures are chosen, and checked against the real logs and the made-up
 * fleets in the tests.
 */
export const SLOW_ENGINE = {
  idleKPerMin: 2,
  perKmhKPerMin: 0.045,
  idleRpm: 800,
  mostRpmFactor: 3,
  blockLossPerS: 0.0003,
  heaterLossPerS: 0.0013,
  /** The slowest of the slow, with the heater on full in any weather. */
  weakestShare: 0.75,
  /** Nobody heats the cabin from here up; below 0 °C the heater is on full. */
  heaterOffAboveC: 20,
} as const;
