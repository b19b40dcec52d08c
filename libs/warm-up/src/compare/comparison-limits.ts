import { type WarmUpAnalysis } from '../types/analysis.ts';
import { sayTemp } from '../words/say.ts';

const OTHER_WEATHER_K = 10;
const OTHER_PACE_KMH = 20;

/** What the pair of logs leaves open, said beside every comparison. */
export function comparisonLimits(before: WarmUpAnalysis | null, after: WarmUpAnalysis | null): string[] {
  const limits = [
    'Both logs rest on the engine’s own temperature sensor.',
    'They show how the engine warms up, not that radiator, fan, pump or hoses will last.',
  ];
  if (after && after.coldStart !== true) limits.push('The log after the repair does not begin with a cold engine.');
  if (!before || !after) return limits;
  if (before.airC !== null && after.airC !== null && Math.abs(before.airC - after.airC) > OTHER_WEATHER_K) {
    limits.push(`The weather differed: ${sayTemp(before.airC)} outside before, ${sayTemp(after.airC)} after.`);
  }
  const { meanSpeedKmh: earlier } = before.heatInput;
  const { meanSpeedKmh: later } = after.heatInput;
  if (earlier !== null && later !== null && Math.abs(earlier - later) > OTHER_PACE_KMH) {
    limits.push(`The drives differed: ${Math.round(earlier)} km/h on average before, ${Math.round(later)} km/h after.`);
  }
  return limits;
}
