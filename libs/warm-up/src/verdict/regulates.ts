import { type KneeFit } from '../knee/fit-knee.ts';
import { type Opening } from '../knee/opening.ts';
import { sayTemp } from '../words/say.ts';
import { seenKnee } from '../words/seen-knee.ts';
import { behindSlowEngineK, wouldHaveGoneOn } from './against-slow-engine.ts';
import { type Findings, type Opinion } from './findings.ts';
import { isValvesWork } from './is-valves-work.ts';
import { keptLevel, type KeptLevel } from './kept-level.ts';
import { mayHoldLower } from './may-hold-lower.ts';
import { lossyWhenShut, reachedLate } from './passes-when-shut.ts';
import { FAIRLY_SHARP, sureness } from './sureness.ts';
import { EARLY_K, LATE_K, TOLERANCE_K } from './tolerance.ts';
import { unmarked } from './unmarked.ts';

/** A valve that opens this far below its mark, or below this at all, hardly closes. */
const NO_THERMOSTAT_K = 27;
const LOWEST_OPENING_C = 58;
const BEHIND_K = 12;
/** A little below the mark: within what valve, sensor and method allow together, but nothing to be sure of. */
const UNSURE = 0.6;

/** A clear end of the climb and a level that is kept: the valve works, and where it opens can be told. */
export function regulates(findings: Findings): Opinion | null {
  const { knee, opening, level, nominalC } = findings;
  if (!knee || !opening || !isValvesWork(findings, knee)) return null;
  if (opening.estimate < Math.max(LOWEST_OPENING_C, (nominalC ?? 0) - NO_THERMOSTAT_K)) return null;
  const kept = keptLevel(level);
  const seen = seenKnee(findings, knee);
  if (behindSlowEngineK(findings, knee) >= BEHIND_K) return reachedLate(findings, knee, { seen, even: kept.even });
  const confidence = sureness(findings, knee);
  if (nominalC === null) return unmarked(findings, { opening, kept, confidence, seen });
  const offK = opening.estimate - nominalC;
  if (offK < -EARLY_K && opening.high < nominalC - TOLERANCE_K + 1)
    return early(findings, { knee, opening, kept, nominalC, confidence, seen });
  if (offK > LATE_K) return null;
  const limit = offK < -EARLY_K ? UNSURE : 1;
  return lossyWhenShut(findings, { confidence, seen }) ?? { verdict: 'normal', confidence: Math.min(confidence, limit), reasons: seen };
}

interface Early {
  knee: KneeFit;
  opening: Opening;
  kept: KeptLevel;
  nominalC: number;
  confidence: number;
  seen: string[];
}

function early(findings: Findings, { knee, opening, kept, nominalC, confidence, seen }: Early): Opinion | null {
  if (!kept.even || knee.sharpness < FAIRLY_SHARP || mayHoldLower(findings)) return null;
  const belowK = nominalC - opening.estimate;
  return {
    verdict: 'opens-early',
    confidence: Math.min(confidence, 0.5 + 0.05 * (belowK - EARLY_K), wouldHaveGoneOn(findings, knee) && !kept.still ? 0.92 : 0.7),
    reasons: [
      ...seen,
      `The valve opens ${Math.round(belowK)} °C below the marked ${sayTemp(nominalC)}; makers allow 2 to 3 °C.`,
      ...(kept.still ? ['The reading then stands perfectly still: rule out a frozen sensor.'] : []),
      'A sensor that reads low looks the same: compare it with the intake sensor when everything is cold.',
    ],
  };
}
