/** An engine with a shut thermostat and steady heat: °C per second of heating without losses, and the share of the excess lost per second. */
export interface ClosedPhase {
  startC: number;
  airC: number;
  heatKPerS: number;
  lossPerS: number;
}

/**
 * Temperature of an engine with a shut thermostat after some time at steady heat. Closed form of the lumped model
 * C·dT/dt = Q − UA·(T − T_air): T = T_end − (T_end − T_start)·e^(−t·UA/C) with T_end = T_air + Q/UA.
 *
 * @param phase Q/C in K/s as `heatKPerS`, UA/C in 1/s as `lossPerS`, temperatures in °C
 * @param timeS Seconds from the start
 * @returns °C
 * @example closedPhaseTempC({ startC: 15, airC: 15, heatKPerS: 0.1, lossPerS: 0.0003 }, 370) // 50.0
 */
export function closedPhaseTempC({ startC, airC, heatKPerS, lossPerS }: ClosedPhase, timeS: number): number {
  if (lossPerS === 0) return startC + heatKPerS * timeS;
  const endC = airC + heatKPerS / lossPerS;
  return endC - (endC - startC) * Math.exp(-timeS * lossPerS);
}

/**
 * How long an engine with a shut thermostat takes to a temperature at steady heat; null if it never gets there.
 *
 * @example closedPhaseTimeS({ startC: 15, airC: 15, heatKPerS: 0.1, lossPerS: 0.0003 }, 87) // 811 s
 */
export function closedPhaseTimeS({ startC, airC, heatKPerS, lossPerS }: ClosedPhase, tempC: number): number | null {
  if (tempC <= startC) return 0;
  if (lossPerS === 0) return heatKPerS > 0 ? (tempC - startC) / heatKPerS : null;
  const endC = airC + heatKPerS / lossPerS;
  return tempC < endC ? Math.log((endC - startC) / (endC - tempC)) / lossPerS : null;
}
