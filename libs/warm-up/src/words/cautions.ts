import { type Verdict } from '../types/analysis.ts';

const COOLANT_C = 105;

/** What can hurt. */
export function cautions(verdict: Verdict, highestC: number | null): string[] {
  const words = ['Logging on the road is a passenger’s task, or is read out parked.'];
  if (verdict === 'stuck-closed' || (highestC !== null && highestC > COOLANT_C)) {
    words.unshift(
      'Stop the engine and do not drive: it overheats. Never open the cap while hot; wait until it is cold and without pressure.',
    );
  }
  return words;
}
