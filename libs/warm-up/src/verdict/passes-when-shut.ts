import { type KneeFit } from '../knee/fit-knee.ts';
import { heaterShare } from '../model/heater-share.ts';
import { SLOW_ENGINE } from '../model/slow-engine.ts';
import { type Findings, type Opinion } from './findings.ts';
import { EARLY_K } from './tolerance.ts';

/** A block with the heater off and the valve tight loses at most this (per second and degree; below 0.0009 in every log tried). */
const TIGHT_LOSS_PER_S = 0.0006;
const UNEXPLAINED_PER_S = 0.00035;

interface Seen {
  confidence: number;
  seen: string[];
}

/** Opens where it should but let more heat go on the way up than block and expected heater do; null when the loss is explained. */
export function lossyWhenShut({ lossShutPerS, air, heater }: Findings, { confidence, seen }: Seen): Opinion | null {
  if (lossShutPerS === null || air.airC === null || heater === 'on') return null;
  const excess = lossShutPerS - TIGHT_LOSS_PER_S - SLOW_ENGINE.heaterLossPerS * heaterShare(air.airC, heater);
  if (excess < UNEXPLAINED_PER_S) return null;
  if (heater === 'off' && excess >= 2 * UNEXPLAINED_PER_S) {
    const reason = 'With the heater off it still lost more heat on the way up than a block does: the valve passes coolant when shut.';
    return { verdict: 'leaks', confidence: 0.6, reasons: [...seen, reason] };
  }
  const reason =
    'On the way up it lost more heat than the weather explains: a heater on full does that, a valve that leaks when shut does too.';
  return { verdict: 'normal', confidence: Math.min(confidence, 0.75), reasons: [...seen, reason] };
}

/** Got to its level far later than a slow sound engine: at the right level it leaks when shut, otherwise this is no thermostat's work. */
export function reachedLate(
  { nominalC, opening }: Findings,
  knee: KneeFit,
  { seen, even }: { seen: string[]; even: boolean },
): Opinion | null {
  if (!even || nominalC === null || !opening || Math.abs(opening.estimate - nominalC) > EARLY_K || knee.tempC < nominalC - EARLY_K)
    return null;
  const reason =
    'It opens and holds, but gets there late: even a slow engine with a tight thermostat would have been there before. The valve may pass coolant when shut.';
  return { verdict: 'leaks', confidence: 0.55, reasons: [...seen, reason] };
}
