import { comparison, type ComparisonQuestion, orderPlan, type OrderQuestion } from '#libs/fitment';

const ROUNDS = 50;
const WARM_UP = 20;

/** Repeatable numbers from 0 to 1 (linear congruence), so that every run measures the same questions. */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
}

/** Twelve variants by ten features, half of them read, with five more to be valued for the next reading. */
function comparisonQuestion(seed: number): ComparisonQuestion {
  const next = numbersFrom(seed);
  const features = Array.from({ length: 10 }, (_, index) =>
    index < 4
      ? ({ key: `word${index}`, kind: 'category', criticality: 'function', minutes: 1 } as const)
      : ({
          key: `figure${index}`,
          kind: 'number',
          criticality: 'function',
          tolerance: 0.3,
          standardUncertainty: 0.025,
          minutes: 1,
        } as const),
  );
  const valueOf = (kind: 'category' | 'number'): string | number =>
    kind === 'category' ? `v${Math.floor(next() * 3)}` : 50 + Math.floor(next() * 24) / 2;
  const candidates = Array.from({ length: 12 }, (_, index) => ({
    id: `V${index}`,
    values: Object.fromEntries(features.map(({ key, kind }) => [key, valueOf(kind)])),
  }));
  const readings = features
    .filter((_, index) => index % 2 === 0)
    .map(({ key, kind }) => ({ key, value: valueOf(kind), standardUncertainty: 0.5 }));
  return { features, candidates, readings };
}

function orderQuestion(seed: number, recourse: 'blind' | 'informed'): OrderQuestion {
  const next = numbersFrom(seed);
  const weights = Array.from({ length: 10 }, () => next() + 0.02);
  const total = weights.reduce((sum, weight) => sum + weight, 0.3);
  const candidates = weights.map((weight, index) => ({
    id: `V${index}`,
    probability: weight / total,
    price: 20 + 60 * next(),
    restockingPercent: 30 * next(),
  }));
  return { candidates, carriage: 6, returnCarriage: 8, delayCost: 30, bayHoldCost: 20, recourse };
}

function measure(name: string, target: number, once: (seed: number) => void): string {
  for (let round = 0; round < WARM_UP; round += 1) once(round);
  const times = Array.from({ length: ROUNDS }, (_, round) => {
    const started = performance.now();
    once(round);
    return performance.now() - started;
  }).sort((a, b) => a - b);
  const median = times[Math.floor(ROUNDS / 2)] ?? Number.NaN;
  const ninetieth = times[Math.floor(ROUNDS * 0.9)] ?? Number.NaN;
  return `${name}: median ${median.toFixed(2)} ms, nine in ten under ${ninetieth.toFixed(2)} ms (wanted under ${target} ms)`;
}

/** Times the comparison and the order plan at the sizes that a workshop meets at most. */
export function run(): string {
  return [
    measure('comparison of 12 variants by 10 features', 5, (seed) => void comparison(comparisonQuestion(seed))),
    measure('order plan of 10 candidates, blind', 50, (seed) => void orderPlan(orderQuestion(seed, 'blind'))),
    measure('order plan of 10 candidates, informed', 50, (seed) => void orderPlan(orderQuestion(seed, 'informed'))),
  ].join('\n');
}
