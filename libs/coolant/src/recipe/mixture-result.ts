import { type Glycol } from '../glycol.ts';
import { type Additive } from '../strength/additive.ts';
import { productPercent } from '../strength/product-percent.ts';
import { strengthOfMass } from '../strength/strength-of-mass.ts';
import { type Strength } from '../strength/strength.ts';
import { type MixtureResult } from './recipe.types.ts';

/**
 * A computed mixture as a recipe reports it.
 *
 * @param glycol Which glycol
 * @param massPercent Mass % of pure glycol in the mixture
 * @param additive The product that its share is told of
 */
export function mixtureResult(
  glycol: Glycol,
  massPercent: number,
  additive: Additive,
): { readonly strength: Strength; readonly result: MixtureResult } {
  const strength = strengthOfMass(glycol, massPercent);
  return {
    strength,
    result: {
      resultVolumePercent: strength.volumePercent,
      resultMassPercent: strength.massPercent,
      resultFreezingPointC: strength.freezingPointC,
      resultProductPercent: productPercent(massPercent, additive),
    },
  };
}
