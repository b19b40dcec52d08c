import { formatFigure } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { bisect } from '../numeric/bisect.ts';
import { refuse, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { densityAt20 } from '../strength/density-at-20.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { strengthOfMass } from '../strength/strength-of-mass.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';
import { flush, type Flush } from './flush.ts';
import { recipe } from './recipe.ts';
import { type Recipe, type RecipeInput } from './recipe.types.ts';

export interface RecipeAfterFlushInput extends Omit<RecipeInput, 'drainedVolumeL' | 'residual'> {
  /** What each draining takes out, the last one before filling too, L. */
  readonly drainedVolumeL: number;
  /** Exchanges against water that were made. */
  readonly cycles: number;
  /** What was in the system before the first exchange; left out: counted as water. */
  readonly present?: StrengthInput | undefined;
}

export interface RecipeAfterFlush extends Recipe {
  readonly remainingFraction: number;
  readonly cycles: number;
  /** What stays in the block when the last filling goes in, L. */
  readonly leftInBlockL: number;
  /** Strength of that water. */
  readonly leftInBlockVolumePercent: number;
}

/** Each exchange takes the same share of the glycol's mass; the system is topped up to full with water in between. */
function flushedMassPercent(glycol: Glycol, massPercent: number, remainingFraction: number): number {
  const before = massPercent / 100;
  const glycolKgPerL = before * densityAt20(glycol, before) * remainingFraction;
  return 100 * bisect((w) => w * densityAt20(glycol, w), glycolKgPerL, { low: 0, high: before });
}

function leftPercent(input: RecipeAfterFlushInput, remainingFraction: number): Outcome<{ massPercent: number; text: string }> {
  const { glycol, present } = input;
  if (present === undefined) {
    const text = 'The strength before the flush is not known: what stays in the block is counted as plain water.';
    return { ok: true, massPercent: 0, text };
  }
  const found = toStrength(glycol, present, { field: 'present' });
  if (!found.ok) return found;
  const massPercent = flushedMassPercent(glycol, creditedMassPercent(glycol, found.strength), remainingFraction);
  const left = formatFigure(strengthOfMass(glycol, massPercent).volumePercent, 1);
  return { ok: true, massPercent, text: `After the flush the water left in the block still holds ${left} volume % of glycol.` };
}

/**
 * The recipe for filling after a flush: the water that the flush leaves in the block dilutes the filling, so it gets
 * more concentrate than the table on the bottle says.
 *
 * @param input As for {@link recipe}; `drainedVolumeL` is what one draining takes out, `cycles` how often it was done
 * @returns The recipe with the flush's figures; refused like a recipe
 * @example recipeAfterFlush({ glycol: 'ethylene', systemVolumeL: 8, drainedVolumeL: 4, cycles: 3,
 *   additive: { volumePercent: 100 }, target: { volumePercent: 45 } }) // 4 L of water stay in: additiveL 3.63
 */
export function recipeAfterFlush(input: RecipeAfterFlushInput): Outcome<RecipeAfterFlush> {
  const { systemVolumeL, drainedVolumeL, cycles, present, ...rest } = input;
  const problem = checkNumber(cycles, { field: 'cycles', name: 'The number of cycles', unit: '', least: 1 });
  if (problem) return refuse(problem);
  const flushed = flush({ systemVolumeL, drainedVolumeL, cycles });
  if (!flushed.ok) return flushed;
  const left = leftPercent({ ...input, present }, flushed.remainingFraction);
  if (!left.ok) return left;
  const filled = recipe({ ...rest, systemVolumeL, drainedVolumeL, residual: { massPercent: left.massPercent } });
  if (!filled.ok) return filled;
  const figures: Pick<Flush, 'remainingFraction' | 'cycles' | 'leftInBlockL'> = {
    remainingFraction: flushed.remainingFraction,
    cycles,
    leftInBlockL: flushed.leftInBlockL,
  };
  return {
    ...filled,
    ...figures,
    leftInBlockVolumePercent: strengthOfMass(input.glycol, left.massPercent).volumePercent,
    assumptions: [...flushed.assumptions, left.text, ...filled.assumptions],
    sources: [...filled.sources, SOURCE.flush],
  };
}
