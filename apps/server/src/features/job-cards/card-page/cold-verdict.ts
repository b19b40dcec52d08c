import { type ColdReading, safeToOpen } from '#libs/checklist';

export interface ColdVerdictWords {
  readonly verdict: 'fits' | 'does-not-fit' | 'inconclusive';
  readonly word: string;
  readonly sum: string;
}

const VERDICTS = {
  safe: { verdict: 'fits', word: 'Cold enough' },
  unsure: { verdict: 'inconclusive', word: 'Not sure yet' },
  'too-hot': { verdict: 'does-not-fit', word: 'Too hot to open' },
  pressure: { verdict: 'does-not-fit', word: 'Under pressure' },
} as const;

/** What the hose, the cap and the gauge say of pressure, as one answer. */
export const PRESSURE_SIGNS = {
  soft: { pressure: 'none', hose: 'soft' },
  'none-shown': { pressure: 'none', hose: 'not-reached' },
  hard: { pressure: 'some', hose: 'hard' },
  unsure: { pressure: 'unsure', hose: 'not-reached' },
} as const;

export type PressureSign = keyof typeof PRESSURE_SIGNS;

/**
 * What a reading comes to, as the page says it and as its script says it while it is typed.
 *
 * @example coldVerdict(reading) // { verdict: 'fits', word: 'Cold enough', sum: '47.5 + 2.0 = 49.5, at most 50. No pressure.' }
 */
export function coldVerdict(reading: ColdReading): ColdVerdictWords {
  const { verdict, why } = safeToOpen(reading);
  const said = VERDICTS[verdict];
  return { ...said, sum: why.startsWith(`${said.word}: `) ? why.slice(said.word.length + 2) : why };
}
