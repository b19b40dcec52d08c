import { type ComparisonQuestion, comparisonFeatures, type InstrumentKey, type PartFamily, priorFromHistory } from '#libs/fitment';
import type { BenchCandidate, BenchReading } from './bench.repository.ts';

export interface BenchFacts {
  family: PartFamily;
  candidates: readonly BenchCandidate[];
  readings: readonly BenchReading[];
  instruments: readonly InstrumentKey[];
  history: Parameters<typeof priorFromHistory>[0]['events'];
}

/** Only features that at least one candidate states can part them; the rest would be read for nothing. */
function statedFeatures({ family, candidates, instruments }: BenchFacts): {
  features: ComparisonQuestion['features'];
  unreadable: readonly string[];
} {
  const { features, unreadable } = comparisonFeatures(family, instruments);
  const isStated = (key: string): boolean => candidates.some(({ values }) => values[key] !== undefined);
  return { features: features.filter(({ key }) => isStated(key)), unreadable: unreadable.filter(isStated) };
}

/** What lies on the bench as the comparison takes it: stated values, priors from this engine's history, readings with their doubt. */
export function benchQuestion(facts: BenchFacts): ComparisonQuestion {
  const { candidates, readings, history } = facts;
  const { features, unreadable } = statedFeatures(facts);
  const { priors } = priorFromHistory({ candidates: candidates.map(({ id }) => id), events: history });
  const known = new Set(features.map(({ key }) => key));
  const taken = readings.filter(({ feature }) => known.has(feature));
  return {
    features,
    candidates: candidates.map(({ id, values }) => ({ id, values, prior: priors.find((each) => each.id === id)?.prior })),
    readings: [
      ...taken.map(({ feature, figure, words, couldNotRead, expandedU, place }) => ({
        key: feature,
        value: couldNotRead ? null : (figure ?? words),
        standardUncertainty: expandedU === null ? undefined : expandedU / 2,
        measuredAt: place,
      })),
      ...unreadable.filter((key) => !taken.some(({ feature }) => feature === key)).map((key) => ({ key, value: null })),
    ],
  };
}
