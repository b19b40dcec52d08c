import type { WarmUpAnalysis } from '#libs/warm-up';
import { temperatureText } from '../../../web/figures.ts';
import { sureWords, VERDICT_WORDS, verdictPeg } from './verdict-words.ts';

/** One log in a column of figures, each said with its unit or why there is none. */
export interface ToldLog {
  heading: string;
  when: string;
  starts: string;
  settles: string;
  firstPeak: string;
  reaches80: string;
  opens: string;
  pace: string;
  fallsWithSpeed: string;
  verdict: { peg: string; word: string };
  howSure: string;
}

const NOT_SEEN = 'not seen';

/** @example minutesText(690) // '11 min 30 s' */
export function minutesText(seconds: number): string {
  const whole = Math.round(seconds);
  const [minutes, rest] = [Math.floor(whole / 60), whole % 60];
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}

export function tellLog(analysis: WarmUpAnalysis, { heading, when }: { heading: string; when: string }): ToldLog {
  const { startC, coldStart, plateauC, highestC, firstPeakC, openingC, warmUpRateCPerMin } = analysis;
  const start = startC === null ? NOT_SEEN : temperatureText(startC);
  return {
    heading,
    when,
    starts: coldStart === null ? start : `${start}, ${coldStart ? 'cold' : 'not cold'}`,
    settles:
      plateauC === null ? (highestC === null ? NOT_SEEN : `no level; up to ${temperatureText(highestC)}`) : temperatureText(plateauC),
    firstPeak: firstPeakC === null ? NOT_SEEN : temperatureText(firstPeakC),
    reaches80: reaches80(analysis),
    opens: openingC
      ? `${temperatureText(openingC.estimate)} (${temperatureText(openingC.low)} to ${temperatureText(openingC.high)})`
      : 'not to be told',
    pace: warmUpRateCPerMin === null ? NOT_SEEN : `${warmUpRateCPerMin.toFixed(1)} °C a minute`,
    fallsWithSpeed: fallsWithSpeed(analysis),
    verdict: { peg: verdictPeg(analysis), word: VERDICT_WORDS[analysis.verdict] },
    howSure: sureWords(analysis),
  };
}

function reaches80({ timeTo80S, startC, highestC }: WarmUpAnalysis): string {
  if (startC !== null && startC >= 80) return 'was warmer at the start';
  if (timeTo80S !== null) return `after ${minutesText(timeTo80S)}`;
  return highestC !== null && highestC < 80 ? 'not reached' : NOT_SEEN;
}

function fallsWithSpeed({ fallWithSpeed }: WarmUpAnalysis): string {
  if (!fallWithSpeed) return 'not to be told';
  return fallWithSpeed.falls ? 'yes' : 'no';
}
