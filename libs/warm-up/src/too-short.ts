import { type CleanLog } from './clean/clean-log.ts';
import { type WarmUpAnalysis } from './types/analysis.ts';
import { type WarmUpInput } from './types/warm-up-input.ts';
import { COLD_LOG } from './words/advice.ts';
import { cautions } from './words/cautions.ts';

/** The answer to a log with too few readings for any curve. */
export function tooShort({ samples }: WarmUpInput, log: CleanLog): WarmUpAnalysis {
  const broken = log.endOfRange > samples.length / 2;
  return {
    verdict: broken ? 'doubtful-data' : 'not-enough',
    confidence: 0.9,
    openingC: null,
    firstPeakC: null,
    plateauC: null,
    coldStart: null,
    warmUpRateCPerMin: null,
    reasons: [
      broken
        ? 'Most readings sit at the end of the sensor’s range (−40 or 215 °C): a broken or shorted sensor wire looks like that.'
        : `Only ${log.count} readings over less than half a minute are left: too few for any curve.`,
    ],
    behaviour: 'Too few readings for a curve.',
    knee: null,
    fit: null,
    timeTo80S: null,
    fallWithSpeed: null,
    fanCycling: null,
    heatInput: { from: 'time', meanSpeedKmh: null, stationaryShare: null, drivingMinutes: null, drivingHeatShare: null },
    yardstick: null,
    airC: null,
    startC: log.count > 0 ? (log.coolantC[0] ?? null) : null,
    highestC: log.count > 0 ? log.coolantC.subarray(0, log.count).reduce((highest, value) => Math.max(highest, value)) : null,
    advice: [broken ? 'Check the sensor’s plug and wiring, then log again.' : COLD_LOG],
    cautions: cautions(broken ? 'doubtful-data' : 'not-enough', null),
    cleaned: {
      samples: samples.length,
      used: log.count,
      dropped: log.dropped.map(({ reason, count }) => ({ reason, count })),
      longestGapS: 0,
    },
  };
}
