import { type Grid } from '../grid/grid.ts';
import { closedPhaseTempC } from './closed-phase.ts';
import { heatKPerMin } from './heat-per-minute.ts';
import { heaterShare, type HeaterUse } from './heater-share.ts';
import { SLOW_ENGINE } from './slow-engine.ts';

interface Weather {
  airC: number;
  heater: HeaterUse;
  /** `slow`: heater as the weather asks; `weakest`: least heat, heater on full whatever the weather. */
  engine: 'slow' | 'weakest';
}

/**
 * What a slow but sound engine with a closed thermostat would have done on this very drive: a log that stays below it has a valve that
 * lets heat go. °C on the grid's steps, from the log's own start.
 */
export function slowHealthyCurve(grid: Grid, { airC, heater, engine }: Weather): Float64Array {
  const { size, stepS, running } = grid;
  const lossPerS =
    SLOW_ENGINE.blockLossPerS + SLOW_ENGINE.heaterLossPerS * (engine === 'weakest' && heater !== 'off' ? 1 : heaterShare(airC, heater));
  const share = engine === 'weakest' ? SLOW_ENGINE.weakestShare : 1;
  const out = new Float64Array(size);
  let tempC = grid.smoothC[0] ?? airC;
  for (let index = 0; index < size; index += 1) {
    out[index] = tempC;
    const heatKPerS = ((running[index] ?? 1) * share * heatKPerMin(grid, index)) / 60;
    tempC = closedPhaseTempC({ startC: tempC, airC, heatKPerS, lossPerS }, stepS);
  }
  return out;
}
