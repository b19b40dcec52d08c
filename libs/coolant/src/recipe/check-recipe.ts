import { formatVolume } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Outcome, type Problem, type Warning } from '../outcome.ts';
import { FREEZING_CURVE } from '../strength/freezing-curve.ts';
import { type Additive } from '../strength/additive.ts';
import { type Strength, type StrengthInput } from '../strength/strength.ts';
import { toAdditive } from '../strength/to-additive.ts';
import { toStrength } from '../strength/to-strength.ts';
import { toTarget } from '../strength/to-target.ts';
import { DEFAULT_MARK_ML } from './default-mark.ts';
import { type RecipeInput } from './recipe.types.ts';

/** A recipe's input after every check, in the units the computation uses. */
export interface CheckedRecipe {
  readonly glycol: Glycol;
  readonly systemL: number;
  readonly spaceL: number;
  readonly residualL: number;
  readonly residual: { readonly massPercent: number; readonly volumePercent: number };
  readonly additive: Additive;
  readonly target: Strength & { readonly massPercent: number };
  readonly jug: { readonly jugMl: number; readonly markMl: number } | null;
  readonly assumptions: readonly string[];
  readonly warnings: readonly Warning[];
}

function checkVolumes(input: RecipeInput): Problem | undefined {
  const { systemVolumeL, drainedVolumeL } = input;
  const system = { field: 'systemVolumeL', name: 'The system volume', unit: 'L', least: 0.1, most: 500 };
  const space = { field: 'drainedVolumeL', name: 'The space to fill (drained plus missing)', unit: 'L', least: 0 };
  const problem = checkNumber(systemVolumeL, system) ?? (drainedVolumeL === undefined ? undefined : checkNumber(drainedVolumeL, space));
  if (problem) return problem;
  if (drainedVolumeL === undefined || drainedVolumeL <= systemVolumeL) return undefined;
  return {
    code: 'more-than-system',
    kind: 'impossible',
    field: 'drainedVolumeL',
    limit: systemVolumeL,
    message:
      `Drained plus missing is ${formatVolume(drainedVolumeL, { unit: 'L' })}, but the system holds only ` +
      `${formatVolume(systemVolumeL, { unit: 'L' })}. Check both figures.`,
  };
}

function checkJug(input: RecipeInput): Problem | undefined {
  if (input.jugL === undefined) return undefined;
  const markMl = input.markMl ?? DEFAULT_MARK_ML;
  return (
    checkNumber(input.jugL, { field: 'jugL', name: 'The size of the jug', unit: 'L', least: 0.1, most: 100 }) ??
    checkNumber(markMl, { field: 'markMl', name: "The distance of the jug's marks", unit: 'mL', least: 1, most: input.jugL * 1000 })
  );
}

/** What stays in is credited at the table's end where it is stronger: less than it may be, never more. */
function findResidual(
  glycol: Glycol,
  input: StrengthInput | undefined,
): Outcome<{ massPercent: number; volumePercent: number; warnings: readonly Warning[] }> {
  if (input === undefined) {
    return refuse({
      code: 'residual-needed',
      kind: 'malformed',
      field: 'residual',
      message: 'Part of the old coolant stays in: give its strength (read it, or assume one and say so), or drain everything.',
    });
  }
  const found = toStrength(glycol, input, { field: 'residual' });
  if (!found.ok) return found;
  const { massPercent, volumePercent } = found.strength;
  if (massPercent !== null) return { ok: true, massPercent, volumePercent, warnings: [] };
  const curve = FREEZING_CURVE[glycol];
  const text = 'What stays in is stronger than the published table; it is counted as the strongest mixture of the table.';
  return {
    ok: true,
    massPercent: curve.endMassPercent,
    volumePercent: curve.endVolumePercent,
    warnings: [{ code: 'residual-credited-at-limit', text }],
  };
}

function findTarget(input: RecipeInput, additive: Additive): Outcome<{ target: CheckedRecipe['target']; assumptions: readonly string[] }> {
  const found = toTarget(input.glycol, input.target, additive);
  if (!found.ok) return found;
  const { massPercent } = found.strength;
  if (massPercent !== null) return { ok: true, target: { ...found.strength, massPercent }, assumptions: found.assumptions };
  const limit = FREEZING_CURVE[input.glycol].endVolumePercent;
  return refuse({
    code: 'beyond-table',
    kind: 'impossible',
    field: 'target.volumePercent',
    limit,
    message: `A target above ${limit} volume % is beyond the published table, so no recipe can be computed for it. Aim at ${limit} % or less.`,
  });
}

function capacityWarnings(input: RecipeInput): readonly Warning[] {
  if (input.capacityKind !== 'service-refill') return [];
  const text =
    'The capacity is that of a service refill: what stays in the block after draining is not in it, so the whole system holds more. ' +
    'Find the dry fill; with the refill alone what stays in is underrated.';
  return [{ code: 'capacity-is-refill', text }];
}

/**
 * Every check of a recipe's input, and everything in it resolved.
 *
 * @param input As given
 * @returns What the computation needs, or the first problem
 */
export function checkRecipe(input: RecipeInput): Outcome<CheckedRecipe> {
  const { glycol, systemVolumeL } = input;
  const problem = checkVolumes(input) ?? checkJug(input);
  if (problem) return refuse(problem);
  const additive = toAdditive(glycol, input.additive);
  if (!additive.ok) return additive;
  const target = findTarget(input, additive.additive);
  if (!target.ok) return target;
  const spaceL = input.drainedVolumeL ?? systemVolumeL;
  const isEmpty = spaceL >= systemVolumeL;
  const residual = isEmpty ? { ok: true as const, massPercent: 0, volumePercent: 0, warnings: [] } : findResidual(glycol, input.residual);
  if (!residual.ok) return residual;
  return {
    ok: true,
    glycol,
    systemL: systemVolumeL,
    spaceL,
    residualL: systemVolumeL - spaceL,
    residual,
    additive: additive.additive,
    target: target.target,
    jug: input.jugL === undefined ? null : { jugMl: input.jugL * 1000, markMl: input.markMl ?? DEFAULT_MARK_ML },
    assumptions: [
      ...additive.assumptions,
      ...target.assumptions,
      ...(!isEmpty && input.isResidualAssumed === true ? ['The strength of what stays in is assumed, not read.'] : []),
    ],
    warnings: [...additive.warnings, ...residual.warnings, ...capacityWarnings(input)],
  };
}
