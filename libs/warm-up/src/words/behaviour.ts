import { warmUpRate } from '../describe/warm-up-rate.ts';
import { type Findings } from '../verdict/findings.ts';
import { sayDuration, sayTemp } from './say.ts';

/** What the curve does, without a judgement: all that can be said of valves that have no single opening temperature. */
export function behaviour({ grid, knee, level, fan, start, highestC, endC }: Findings): string {
  const rate = warmUpRate(grid, knee?.tempC ?? highestC);
  const parts = [`Starts at ${sayTemp(start.startC)}`];
  if (rate !== null) parts.push(`warms by ${rate.toFixed(1)} °C a minute`);
  if (knee) parts.push(`stops climbing at ${sayTemp(knee.tempC)} after ${sayDuration(knee.timeS)}`);
  if (level) parts.push(`then keeps ${Math.round(level.lowC)} to ${Math.round(level.highC)} °C`);
  else parts.push(`ends at ${sayTemp(endC)} after ${sayDuration(grid.durationS)}`);
  if (fan) parts.push(`the fan pulls it down ${fan.cycles === 1 ? 'once' : `${fan.cycles} times`} from ${sayTemp(fan.highC)}`);
  return `${parts.join(', ')}.`;
}
