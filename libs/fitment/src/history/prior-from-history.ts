import { type FitmentProblem } from '../fitment-input-error.ts';
import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';
import { defaultHistoryWeights, type HistoryWeights } from './history-weights.ts';

/** One thing that is known about an engine and a variant. */
export interface FitmentEvent {
  readonly candidateId: string;
  /** *fitted*: this variant was put into such an engine and ran. *listed*: a catalogue or supplier says so. */
  readonly kind: 'fitted' | 'listed';
  readonly ageDays: number;
  /** Cause of a job that came back after this one; left out when none did. */
  readonly comeback?: 'part' | 'work' | 'other' | undefined;
}

export interface HistoryQuestion {
  /** Ids of the variants to choose among, each once. */
  readonly candidates: readonly string[];
  readonly events: readonly FitmentEvent[];
  readonly weights?: Partial<HistoryWeights> | undefined;
}

export interface HistoryPrior {
  readonly id: string;
  readonly prior: number;
  /** How many fittings of today the events of this variant are worth. */
  readonly evidence: number;
}

/**
 * First guess at which variant an engine has, from what fitted such engines before: the mean of a Dirichlet distribution,
 * prior = (base + evidence) / Σ (base + evidence). An event's weight halves with every half-life; a listing weighs less than
 * a fitting, a fitting that came back less than one that stayed. Never certain, so readings can always overturn it, and a
 * sealing mismatch excludes whatever it says.
 *
 * Source: Dirichlet–multinomial mean; with base 1 and two variants Laplace's rule of succession (from memory). The weights
 * are common practice, no source.
 *
 * @param question - variants, events of any age, and weights where they differ from the defaults
 * @returns priors that sum to 1, in the order of the candidates, and the evidence for variants that aren't among them
 * @throws FitmentInputError `malformed` without candidates, or for a negative age or weight
 * @example
 * priorFromHistory({ candidates: ['A', 'B'], events: [{ candidateId: 'A', kind: 'fitted', ageDays: 0 }] }).priors[0];
 * // { id: 'A', prior: 0.6666666666666666, evidence: 1 }
 */
export function priorFromHistory(question: HistoryQuestion): { readonly priors: readonly HistoryPrior[]; readonly otherEvidence: number } {
  const weights = { ...defaultHistoryWeights, ...question.weights };
  refuseProblems('malformed', historyProblems(question, weights));
  const evidence = new Map<string, number>();
  for (const event of question.events) {
    evidence.set(event.candidateId, (evidence.get(event.candidateId) ?? 0) + eventWeight(event, weights));
  }
  const counts = question.candidates.map((id) => ({ id, evidence: evidence.get(id) ?? 0 }));
  const total = counts.reduce((sum, count) => sum + weights.baseCount + count.evidence, 0);
  const known = new Set(question.candidates);
  const otherEvidence = [...evidence].reduce((sum, [id, weight]) => (known.has(id) ? sum : sum + weight), 0);
  return { priors: counts.map((count) => ({ ...count, prior: (weights.baseCount + count.evidence) / total })), otherEvidence };
}

function eventWeight({ kind, ageDays, comeback }: FitmentEvent, weights: HistoryWeights): number {
  const base = kind === 'listed' ? weights.listing : 1;
  const kept = comeback === undefined ? 1 : weights.comeback[comeback];
  return base * kept * 2 ** (-ageDays / weights.halfLifeDays);
}

function historyProblems({ candidates, events }: HistoryQuestion, weights: HistoryWeights): FitmentProblem[] {
  const { baseCount, listing, halfLifeDays, comeback } = weights;
  return [
    ...(candidates.length === 0 ? [{ field: 'candidates', message: 'There is no candidate: add at least one variant.' }] : []),
    ...candidates.flatMap((id, index) =>
      candidates.indexOf(id) === index ? [] : [{ field: `candidates[${index}]`, message: `The candidate ${id} is listed twice.` }],
    ),
    ...numberProblems(baseCount, { field: 'weights.baseCount', words: 'The base count', above: 0, max: 1e6 }),
    ...numberProblems(halfLifeDays, { field: 'weights.halfLifeDays', words: 'The half-life in days', above: 0, max: 1e6 }),
    ...numberProblems(listing, { field: 'weights.listing', words: 'The weight of a listing', min: 0, max: 1 }),
    ...Object.entries(comeback).flatMap(([cause, weight]) =>
      numberProblems(weight, { field: `weights.comeback.${cause}`, words: `The weight after a comeback (${cause})`, min: 0, max: 1 }),
    ),
    ...events.flatMap(({ ageDays }, index) =>
      numberProblems(ageDays, { field: `events[${index}].ageDays`, words: `The age in days of event ${index + 1}`, min: 0, max: 1e6 }),
    ),
  ];
}
