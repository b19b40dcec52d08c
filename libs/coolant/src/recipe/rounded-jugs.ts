import { type CheckedRecipe } from './check-recipe.ts';
import { mix } from './mix.ts';
import { mixtureResult } from './mixture-result.ts';
import { type RoundedJugs } from './recipe.types.ts';
import { roundToMarks } from './round-to-marks.ts';

/**
 * A recipe in whole jug marks, and what truly comes of it in the system.
 *
 * @param recipe The checked input
 * @param amounts The exact recipe, L
 * @param jug Size and marks, mL
 */
export function roundedJugs(
  recipe: CheckedRecipe,
  amounts: { readonly additiveL: number; readonly waterL: number },
  jug: { readonly jugMl: number; readonly markMl: number },
): RoundedJugs {
  const { glycol, additive } = recipe;
  const jugs = roundToMarks(amounts, jug);
  const additiveL = jugs.reduce((sum, { additiveMl }) => sum + additiveMl, 0) / 1000;
  const waterL = jugs.reduce((sum, { waterMl }) => sum + waterMl, 0) / 1000;
  const residual = { volumeL: recipe.residualL, massFraction: recipe.residual.massPercent / 100 };
  const mixture = mix(glycol, residual, { additive, additiveL, waterL });
  return {
    markMl: jug.markMl,
    jugs,
    additiveL,
    waterL,
    ...mixtureResult(glycol, mixture.massFraction * 100, additive).result,
    overfillL: mixture.volumeL - recipe.systemL,
  };
}
