import type { Recipe } from '#libs/coolant';
import type { UnitPreference } from '#libs/units';
import { saidFigure } from '../units/measure.ts';

interface Poured {
  readonly productName: string;
  readonly units: UnitPreference;
  /** This car's own coolant that goes back in. */
  readonly keptL?: number;
}

/** Additive and water of an empty system share their jugs. */
function sharedJugs({ roundedJugs }: Recipe, { productName, units }: Poured): readonly string[] {
  return (roundedJugs?.jugs ?? []).map(({ additiveMl, waterMl }, index) => {
    const whole = saidFigure(additiveMl + waterMl, 'mark', units);
    if (waterMl === 0) return `Jug ${index + 1}: ${productName} up to ${whole}.`;
    return `Jug ${index + 1}: ${productName} up to ${saidFigure(additiveMl, 'mark', units)}, then demineralised water up to ${whole}.`;
  });
}

/** What to do in which order, in whole marks: onto an old filling the water comes last, so that only water can stay out. */
export function pouringLines(recipe: Recipe, poured: Poured): readonly string[] {
  if (recipe.residualL <= 0) return sharedJugs(recipe, poured);
  const { productName, units, keptL = 0 } = poured;
  const { additiveL, waterL } = recipe.roundedJugs ?? recipe;
  const steps = [
    ...(keptL > 0 ? [`${saidFigure(keptL, 'volume', units)} of this car’s own coolant, as it is.`] : []),
    ...(additiveL > 0 ? [`${saidFigure(additiveL, 'volume', units)} of ${productName}.`] : []),
    ...(waterL > 0 ? [`${saidFigure(waterL, 'volume', units)} of demineralised water.`] : []),
  ];
  const first = steps.length === 1 ? 'Only' : 'First';
  const lines = steps.map((step, index) => `${index === 0 ? first : 'Then'} ${step}`);
  return additiveL > 0 && waterL > 0 ? [...lines, 'If less fits than reckoned, it is water that stays out.'] : lines;
}
