import { timeTo } from '../describe/time-to.ts';
import { type Yardstick } from '../types/analysis.ts';
import { type Findings } from '../verdict/findings.ts';
import { YARDSTICK_K, warmedUpC } from '../verdict/warmed-up.ts';

/** 20 °F as an outside temperature is −6.7 °C (a temperature, not a difference). */
const LEAST_AIR_C = -7;
const MOST_IDLE_SHARE = 0.5;
const START_C = { low: -8, high: 65 };

/** The rule's threshold and whether its own conditions held; null without a nominal temperature. */
export function yardstick({ grid, air, start, heat, nominalC, highestC }: Findings): Yardstick | null {
  if (nominalC === null) return null;
  const thresholdC = warmedUpC(nominalC);
  const conditions = [
    { condition: `outside at the start ${LEAST_AIR_C} °C (20 °F) or warmer`, met: air.airC === null ? null : air.airC >= LEAST_AIR_C },
    {
      condition: 'not more than half of the time at idle',
      met: heat.stationaryShare === null ? null : heat.stationaryShare <= MOST_IDLE_SHARE,
    },
    {
      condition: `coolant between ${START_C.low} and ${START_C.high} °C at the start`,
      met: start.startC >= START_C.low && start.startC <= START_C.high,
    },
    { condition: 'not a hot restart', met: start.coldStart },
  ];
  return {
    nominalC,
    thresholdC,
    within11C: highestC >= nominalC - YARDSTICK_K,
    reachedAfterS: timeTo(grid, thresholdC),
    conditions,
    conditionsMet: conditions.every(({ met }) => met === true),
  };
}
