import { type Grid } from '../grid/grid.ts';
import { type HeatInput } from '../types/analysis.ts';

const STANDING_KMH = 3;
const DRIVING_KMH = 20;

/** How the heat came in: speeds, standstill, and the share made while driving. */
export function heatShare(grid: Grid): HeatInput {
  const { speedKmh, running, heat, heatFrom, size, stepS } = grid;
  if (!speedKmh) return { from: heatFrom, meanSpeedKmh: null, stationaryShare: null, drivingMinutes: null, drivingHeatShare: null };
  let speed = 0;
  let standing = 0;
  let turning = 0;
  let driving = 0;
  let drivingHeat = 0;
  let allHeat = 0;
  for (let index = 0; index < size; index += 1) {
    const kmh = speedKmh[index] ?? 0;
    const on = running[index] ?? 1;
    speed += kmh;
    turning += on;
    if (kmh < STANDING_KMH) standing += on;
    if (kmh > DRIVING_KMH) driving += 1;
    if (kmh > DRIVING_KMH) drivingHeat += (heat[index] ?? 0) * on;
    allHeat += (heat[index] ?? 0) * on;
  }
  return {
    from: heatFrom,
    meanSpeedKmh: speed / size,
    stationaryShare: turning > 0 ? standing / turning : null,
    drivingMinutes: (driving * stepS) / 60,
    drivingHeatShare: allHeat > 0 ? drivingHeat / allHeat : null,
  };
}
