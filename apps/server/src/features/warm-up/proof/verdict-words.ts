import type { Outcome, ThermostatKind, Verdict, WarmUpAnalysis } from '#libs/warm-up';

type Peg = 'fits' | 'does-not-fit' | 'inconclusive' | 'not-read';

/** Less sure than this, a verdict is half a peg. */
const SURE = 0.6;
const VERY_SURE = 0.8;

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  normal: 'normal',
  'opens-early': 'opens early',
  'stuck-open': 'stuck open',
  'stuck-closed': 'stuck closed',
  leaks: 'passes when shut',
  'doubtful-data': 'doubtful readings',
  'not-enough': 'not enough to tell',
};

/** Confidence is a rank, so it is said in words; that a log tells nothing needs none. */
export function sureWords({ verdict, confidence }: Pick<WarmUpAnalysis, 'verdict' | 'confidence'>): string {
  if (verdict === 'not-enough') return '–';
  return confidence >= VERY_SURE ? 'quite sure' : confidence >= SURE ? 'fairly sure' : 'not sure';
}

export function verdictSaid(analysis: Pick<WarmUpAnalysis, 'verdict' | 'confidence'>): string {
  const words = VERDICT_WORDS[analysis.verdict];
  return analysis.verdict === 'not-enough' ? words : `${words}, ${sureWords(analysis)}`;
}

export function verdictPeg({ verdict, confidence }: Pick<WarmUpAnalysis, 'verdict' | 'confidence'>): Peg {
  if (verdict === 'not-enough' || verdict === 'doubtful-data' || confidence < SURE) return 'inconclusive';
  return verdict === 'normal' ? 'fits' : 'does-not-fit';
}

export const OUTCOME_PEGS: Readonly<Record<Outcome, Peg>> = {
  cured: 'fits',
  'works-now': 'fits',
  'looks-better': 'inconclusive',
  'not-proven': 'inconclusive',
  'not-cured': 'does-not-fit',
  owed: 'not-read',
};

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  cured: 'repair proven',
  'works-now': 'works now',
  'looks-better': 'looks better, not proven',
  'not-proven': 'not proven',
  'not-cured': 'still not right',
  owed: 'log after the repair owed',
};

export const KIND_WORDS: Readonly<Record<ThermostatKind, string>> = {
  wax: 'plain wax thermostat',
  'heated-wax': 'electrically heated thermostat',
  twin: 'two thermostats',
  'motor-valve': 'motor valve or electric pump',
  hybrid: 'hybrid or electric car',
  unknown: 'kind of thermostat not known',
};
