import { type Grid } from '../grid/grid.ts';
import { findTops } from './find-tops.ts';
import { fitKnee, type KneeFit } from './fit-knee.ts';
import { type HeatSums } from './heat-sums.ts';

/** A curve without a break must fit at least this much worse. */
export const SHARP = 2.2;
const WIDEST_K = 5;
/** Above the opening a sound engine may still climb: on the road up to full lift, at standstill up to the fan. */
const HIGHER_ON_THE_ROAD_K = 7;
const HIGHER_AT_ALL_K = 16;
const ROAD_KMH = 30;
const LOWEST_C = 45;
const MOST_TOPS = 8;

/** The first bend that stays the last word: sharp, well placed, and not passed by much afterwards. Null when no bend is a knee. */
export function chooseKnee(grid: Grid, sums: HeatSums): KneeFit | null {
  for (const top of findTops(grid).slice(-MOST_TOPS)) {
    if ((grid.smoothC[top] ?? 0) < LOWEST_C) continue;
    const knee = fitKnee(grid, sums, top);
    if (!knee || knee.sharpness < SHARP || knee.highC - knee.lowC > WIDEST_K) continue;
    const { onTheRoadK, atAllK } = passedBy(grid, knee);
    if (onTheRoadK <= HIGHER_ON_THE_ROAD_K && atAllK <= HIGHER_AT_ALL_K) return knee;
  }
  return null;
}

function passedBy(grid: Grid, knee: KneeFit): { onTheRoadK: number; atAllK: number } {
  let onTheRoadK = 0;
  let atAllK = 0;
  for (let index = 0; index < grid.size; index += 1) {
    if ((grid.timeS[index] ?? 0) <= knee.timeS) continue;
    const higherK = (grid.smoothC[index] ?? 0) - knee.tempC;
    atAllK = Math.max(atAllK, higherK);
    const speed = grid.speedKmh?.[index];
    if (speed === undefined || speed > ROAD_KMH) onTheRoadK = Math.max(onTheRoadK, higherK);
  }
  return { onTheRoadK: grid.speedKmh ? onTheRoadK : 0, atAllK };
}
