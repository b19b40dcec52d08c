import { pathToFileURL } from 'node:url';
import { densityKgPerL, recipe, type RecipeInput } from '#libs/coolant';

/** The everyday job: part drain, residual read with an instrument, content from the label, jugs exact and in marks. */
const JOB: RecipeInput = {
  glycol: 'ethylene',
  systemVolumeL: 7,
  drainedVolumeL: 3,
  residual: { freezingPointC: -18 },
  additive: { label: { partsProduct: 1, partsWater: 1, freezingPointC: -37 } },
  target: { freezingPointC: -30 },
  jugL: 2,
};

const ROUNDS = 15;
const ROUND_MS = 40;

/** Microseconds of one call over one round. The sum keeps the work from being optimised away. */
function microsecondsPerCall(call: (step: number) => number): number {
  const start = performance.now();
  let calls = 0;
  let sum = 0;
  let elapsedMs = 0;
  while (elapsedMs < ROUND_MS) {
    for (let step = 0; step < 50; step += 1) sum += call(step);
    calls += 50;
    elapsedMs = performance.now() - start;
  }
  if (!Number.isFinite(sum)) throw new Error('The calculation gave no number.');
  return (elapsedMs * 1000) / calls;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function oneRecipe(step: number): number {
  const found = recipe({ ...JOB, drainedVolumeL: 3 + step / 100 });
  return found.ok ? found.additiveL : Number.NaN;
}

function onePolynomial(step: number): number {
  return densityKgPerL('ethylene', { tempC: 20 + step, massFraction: 0.45 });
}

function perSecond(microseconds: number): string {
  return Math.round(1e6 / microseconds).toLocaleString('en-GB');
}

/**
 * How long one recipe takes beside one bare evaluation of a density polynomial, measured in turns in the same run.
 *
 * @returns Three lines: both rates and their ratio
 */
export function run(): string {
  const rounds = Array.from({ length: ROUNDS }, () => ({
    recipe: microsecondsPerCall(oneRecipe),
    polynomial: microsecondsPerCall(onePolynomial),
  })).slice(3);
  const recipeUs = median(rounds.map((round) => round.recipe));
  const polynomialUs = median(rounds.map((round) => round.polynomial));
  const slowest = Math.max(...rounds.map((round) => round.recipe));
  return [
    `One recipe: ${recipeUs.toFixed(1)} µs (slowest round ${slowest.toFixed(1)} µs), ${perSecond(recipeUs)} a second`,
    `One bare polynomial: ${polynomialUs.toFixed(3)} µs, ${perSecond(polynomialUs)} a second`,
    `One recipe costs as much as ${Math.round(recipeUs / polynomialUs)} bare polynomials`,
  ].join('\n');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.stdout.write(`${run()}\n`);
}
