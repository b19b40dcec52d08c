import { formatFigure, formatTemperature, formatVolume } from '#libs/units';
import { refuse, type Outcome, type Refused, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { shownProtection } from '../strength/shown-protection.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { checkRecipe, type CheckedRecipe } from './check-recipe.ts';
import { jugs } from './jugs.ts';
import { mixtureResult } from './mixture-result.ts';
import { pouringOrder } from './pouring-order.ts';
import { type Recipe, type RecipeInput, type RoundedJugs } from './recipe.types.ts';
import { roundedJugs } from './rounded-jugs.ts';
import { solveFill, type FillSolution } from './solve-fill.ts';

const litres = (volumeL: number): string => formatVolume(volumeL, { unit: 'L' });

/** Rounded up, so that what is drained by the message suffices. */
const litresRoundedUp = (volumeL: number): string => litres(Math.ceil(volumeL * 100 - 1e-6) / 100);

function notReachable(checked: CheckedRecipe, requiredDrainL: number | undefined): Refused {
  const target = `${formatFigure(checked.target.volumePercent, 1)} volume %`;
  if (requiredDrainL === undefined) {
    return refuse({
      code: 'additive-too-weak',
      kind: 'impossible',
      field: 'additive',
      limit: checked.target.massPercent,
      message:
        `The additive holds ${formatFigure(checked.additive.volumePercent, 1)} volume % of glycol and can't bring the system to ` +
        `${target}, however much is drained. Take a stronger product or a weaker target.`,
    });
  }
  const more = requiredDrainL - checked.spaceL;
  return refuse({
    code: 'drain-more',
    kind: 'impossible',
    field: 'drainedVolumeL',
    limit: requiredDrainL,
    requiredDrainL,
    message:
      `Even with additive alone the ${litres(checked.spaceL)} of space don't reach ${target}. Drain ${litresRoundedUp(more)} more: ` +
      `${litresRoundedUp(requiredDrainL)} in total, what was missing on arrival included.`,
  });
}

function recipeAssumptions(checked: CheckedRecipe, shrinkL: number): readonly string[] {
  const { residualL, residual, systemL, spaceL } = checked;
  const stays =
    residualL > 0
      ? `${litres(residualL)} stay in at ${formatFigure(residual.volumePercent, 1)} volume %; ${litres(spaceL)} are to fill.`
      : `The system of ${litres(systemL)} is empty: nothing of the old coolant or of rinsing water stays in.`;
  return [
    ...checked.assumptions,
    stays,
    `Additive and water are measured apart at 20 °C. Mixing shrinks them by ${litres(shrinkL)}: so much more than the space goes in.`,
  ];
}

function recipeWarnings(checked: CheckedRecipe, way: Recipe['way'], rounded: RoundedJugs | undefined): readonly Warning[] {
  const warnings: Warning[] = [];
  if (way === 'water-alone') {
    const text = 'Water alone is enough: what stays in is stronger than the target, and so is the result.';
    warnings.push({ code: 'stronger-than-target', text });
  }
  if (rounded && rounded.resultFreezingPointC > checked.target.freezingPointC + 0.05) {
    const shown = formatTemperature(shownProtection(rounded.resultFreezingPointC, { unit: '°C', decimals: 1 }), {
      unit: '°C',
      decimals: 1,
    });
    const text = `Rounded to the jug's marks the mixture freezes at ${shown}, warmer than the target. One mark more of additive makes it good.`;
    warnings.push({ code: 'rounded-too-weak', text });
  }
  if (rounded && rounded.overfillL > rounded.markMl / 1000) {
    const text = `Rounded to the jug's marks ${litres(rounded.overfillL)} will be left over in the last jug.`;
    warnings.push({ code: 'rounded-overfills', text });
  }
  return warnings;
}

function plainVolumes(checked: CheckedRecipe): number {
  const { systemL, spaceL, residualL, residual, target, additive } = checked;
  const additiveL = (systemL * target.volumePercent - residualL * residual.volumePercent) / additive.volumePercent;
  return Math.min(spaceL, Math.max(0, additiveL));
}

function compose(checked: CheckedRecipe, solution: FillSolution & { kind: 'mixed' | 'water-alone' }, input: RecipeInput): Recipe {
  const { glycol, additive, target, residualL, spaceL, jug } = checked;
  const isMixed = solution.kind === 'mixed';
  const amounts = { additiveL: isMixed ? solution.additiveL : 0, waterL: solution.waterL };
  const { strength, result } = mixtureResult(glycol, isMixed ? target.massPercent : solution.massFraction * 100, additive);
  const shrinkL = amounts.additiveL + amounts.waterL - spaceL;
  const rounded = jug ? roundedJugs(checked, amounts, jug) : undefined;
  return {
    way: solution.kind,
    ...amounts,
    ...result,
    spaceL,
    residualL,
    shrinkL,
    additiveByPlainVolumesL: plainVolumes(checked),
    targetVolumePercent: target.volumePercent,
    targetFreezingPointC: target.freezingPointC,
    additiveVolumePercent: additive.volumePercent,
    additiveMassPercent: additive.massPercent,
    pouring: pouringOrder(amounts, residualL === 0),
    ...(jug ? { jugs: jugs(amounts, jug.jugMl / 1000) } : {}),
    ...(rounded ? { roundedJugs: rounded } : {}),
    assumptions: recipeAssumptions(checked, shrinkL),
    warnings: [
      ...checked.warnings,
      ...recipeWarnings(checked, solution.kind, rounded),
      ...strengthWarnings(strength, { percent: result.resultProductPercent, limits: input.limits }),
    ],
    sources: [SOURCE.freezing, SOURCE.density, SOURCE.pureDensity, SOURCE.strengthLimits],
  };
}

/**
 * How much additive and how much water to pour, so that the full system has the strength wanted.
 *
 * Counts what stays in the block and what was missing on arrival, conserves mass, and says how far the volumes shrink.
 *
 * @param input Volumes in L, strengths in any one way; `drainedVolumeL` is the whole space to fill
 * @returns The amounts measured apart at 20 °C, the order of pouring, jugs exact and in whole marks with what truly
 *   comes of them; refused with `requiredDrainL` where too much of the old filling stays in, without it where the
 *   additive itself is too weak
 * @example recipe({ glycol: 'ethylene', systemVolumeL: 7, drainedVolumeL: 4, residual: { volumePercent: 33 },
 *   additive: { volumePercent: 100 }, target: { volumePercent: 45 } }) // additiveL 2.174, waterL 1.882; additiveByPlainVolumesL 2.16
 */
export function recipe(input: RecipeInput): Outcome<Recipe> {
  const checked = checkRecipe(input);
  if (!checked.ok) return checked;
  const solution = solveFill({
    glycol: checked.glycol,
    systemL: checked.systemL,
    residualL: checked.residualL,
    residualMassFraction: checked.residual.massPercent / 100,
    additive: { massFraction: checked.additive.massPercent / 100, densityKgPerL: checked.additive.densityKgPerL },
    targetMassFraction: checked.target.massPercent / 100,
  });
  switch (solution.kind) {
    case 'additive-too-weak':
      return notReachable(checked, undefined);
    case 'drain-more':
      return notReachable(checked, solution.requiredDrainL);
    case 'mixed':
    case 'water-alone':
      return { ok: true, ...compose(checked, solution, input) };
  }
}
