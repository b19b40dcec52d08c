import type { Yardstick } from '#libs/warm-up';
import { temperatureText } from '../../../web/figures.ts';
import { minutesText } from './told-log.ts';

/** The rule of 13 CCR 1968.2 (e)(10) as a yardstick beside the verdict: what it asks for, and whether its own conditions held. */
export interface YardstickSaid {
  words: string;
  conditions: { peg: 'fits' | 'does-not-fit' | 'not-read'; word: string; condition: string }[];
}

/** A difference of 11 °C (20 °F) stays a difference; the temperatures in the sentence are temperatures. */
export function sayYardstick({ nominalC, thresholdC, within11C, reachedAfterS, conditions, conditionsMet }: Yardstick): YardstickSaid {
  const when = reachedAfterS === null ? '' : ` after ${minutesText(reachedAfterS)}`;
  const reached = within11C ? `came within it${when}` : 'did not come within it';
  const counts = conditionsMet
    ? 'Its own conditions held.'
    : 'Its own conditions did not all hold, or can’t be told, so it decides nothing here.';
  return {
    words: `Yardstick: within 11 °C (20 °F) of the marked ${temperatureText(nominalC)}, that is ${temperatureText(thresholdC)} or more (13 CCR §1968.2 (e)(10)). This engine ${reached}. ${counts} It is no verdict.`,
    conditions: conditions.map(({ condition, met }) => ({
      condition,
      peg: met === null ? 'not-read' : met ? 'fits' : 'does-not-fit',
      word: met === null ? 'can’t be told' : met ? 'held' : 'did not hold',
    })),
  };
}
