import { type Grid } from '../grid/grid.ts';
import { SLOW_ENGINE } from './slow-engine.ts';

/** Heat that a slow engine brings at this step, as °C per minute of warming without losses; from road speed, else engine speed, else idle. */
export function heatKPerMin(grid: Grid, index: number): number {
  if (grid.speedKmh) return SLOW_ENGINE.idleKPerMin + SLOW_ENGINE.perKmhKPerMin * (grid.speedKmh[index] ?? 0);
  if (grid.rpm) return SLOW_ENGINE.idleKPerMin * Math.min(SLOW_ENGINE.mostRpmFactor, (grid.rpm[index] ?? 0) / SLOW_ENGINE.idleRpm);
  return SLOW_ENGINE.idleKPerMin;
}
