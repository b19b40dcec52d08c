import { type KneeFit } from '../knee/fit-knee.ts';
import { type Findings } from './findings.ts';
import { HOLDS_LONG_ENOUGH_S } from './kept-level.ts';
import { TOLERANCE_K } from './tolerance.ts';

export const VERY_SHARP = 5;
export const FAIRLY_SHARP = 3;

/** How far a clear bend can be trusted: by its sharpness, less for a short level, a warm start or a gap; more where it agrees with the mark. */
export function sureness({ grid, level, start, nominalC, opening }: Findings, knee: KneeFit): number {
  let confidence = knee.sharpness >= VERY_SHARP ? 0.9 : knee.sharpness >= FAIRLY_SHARP ? 0.82 : 0.68;
  if (grid.durationS - knee.timeS < HOLDS_LONG_ENOUGH_S || !level) confidence -= 0.15;
  if (start.coldStart === false) confidence -= 0.05;
  if (grid.bridged.subarray(knee.window.from, knee.window.to + 1).includes(1)) confidence -= 0.15;
  if (nominalC !== null && opening && Math.abs(opening.estimate - nominalC) <= TOLERANCE_K) confidence += 0.05;
  return confidence;
}
