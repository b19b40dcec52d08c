import { type Level } from '../describe/settled-level.ts';

/** How well a level was kept after the climb. */
export interface KeptLevel {
  /** Long enough to be called a level. */
  held: boolean;
  /** Long and evenly enough to blame or trust the valve for it: a slow stretch of road bends the curve too. */
  even: boolean;
  veryEven: boolean;
  /** Without the least change, as a real level seldom is. */
  still: boolean;
}

export const HOLDS_LONG_ENOUGH_S = 240;
const EVEN_K = 9;
const VERY_EVEN_K = 7;
const EVEN_C_PER_MIN = 0.6;

export function keptLevel(level: Level | null): KeptLevel {
  if (!level || level.lastsS < HOLDS_LONG_ENOUGH_S / 2) return { held: false, even: false, veryEven: false, still: false };
  const rangeK = level.highC - level.lowC;
  const even = level.lastsS >= HOLDS_LONG_ENOUGH_S && rangeK <= EVEN_K && Math.abs(level.driftCPerMin) <= EVEN_C_PER_MIN;
  return { held: true, even, veryEven: even && rangeK <= VERY_EVEN_K, still: rangeK === 0 };
}
