import { type Opening } from '../knee/opening.ts';
import { type Findings, type Opinion } from './findings.ts';
import { WARM_AIR_C } from './is-valves-work.ts';
import { type KeptLevel } from './kept-level.ts';
import { mayHoldLower } from './may-hold-lower.ts';

/** Below the first no car thermostat opens by design, below the second few do. */
const NO_DESIGN_C = 70;
const FEW_DESIGNS_C = 76;
/** An open valve can hold up to about this much above the air. */
const ABOVE_AIR_K = 45;

interface Seen {
  opening: Opening;
  kept: KeptLevel;
  confidence: number;
  seen: string[];
}

/** Judges a knee without knowing the mark: by behaviour alone, and therefore carefully. */
export function unmarked(findings: Findings, { opening, kept, confidence, seen }: Seen): Opinion | null {
  const { airC } = findings.air;
  if (!kept.held || (!kept.veryEven && (airC === null || airC >= WARM_AIR_C))) return null;
  if (opening.high < NO_DESIGN_C) {
    if (!kept.even || mayHoldLower(findings)) return null;
    const reason = 'Car thermostats are made for 76 °C and more; without the mark (stamp or catalogue) this stays a suspicion.';
    return { verdict: 'opens-early', confidence: Math.min(confidence, 0.55), reasons: [...seen, reason] };
  }
  if (opening.estimate < FEW_DESIGNS_C || (airC !== null && opening.estimate < airC + ABOVE_AIR_K)) return null;
  const reason = 'The nominal temperature was not given, so only the behaviour was judged.';
  return { verdict: 'normal', confidence: Math.min(confidence, 0.85), reasons: [...seen, reason] };
}
