import type { Glycol } from '#libs/coolant';
import { formatFigure, type UnitPreference } from '#libs/units';
import { assumedText, type GroundsView } from '../grounds-view.ts';
import { inUnits } from '../units/in-units.ts';
import { saidFigure } from '../units/measure.ts';
import type { ReadyRefill } from './reckon-refill.ts';

/** How far other published tables lie from the one that is used, K: as the coolant library's tests hold it. */
function tablesAgreeToK(glycol: Glycol, massPercent: number | null): number {
  if (glycol === 'propylene') return 1.5;
  if (massPercent === null || massPercent > 40) return 3;
  return massPercent <= 30 ? 0.6 : 1.6;
}

function roundingText({ recipe }: ReadyRefill, units: UnitPreference): string {
  const rounded = recipe.roundedJugs;
  if (!rounded) return '';
  const points = rounded.resultVolumePercent - recipe.resultVolumePercent;
  const size =
    Math.abs(points) < 0.05
      ? 'changes less than 0.1 points'
      : `${points > 0 ? 'adds' : 'takes'} ${formatFigure(Math.abs(points), 1)} points`;
  return `after rounding to ${saidFigure(rounded.markMl, 'mark', units)} marks, which ${size}`;
}

/** How sure, what was assumed, and where the figures come from. */
export function presentGrounds(answer: ReadyRefill, glycol: Glycol, units: UnitPreference): GroundsView {
  const { recipe } = answer;
  const poured = recipe.roundedJugs ?? recipe;
  const product = poured.resultProductPercent === null ? '' : `, ${formatFigure(poured.resultProductPercent, 1)} % of product,`;
  const agree = saidFigure(tablesAgreeToK(glycol, poured.resultMassPercent), 'difference', units);
  const one = saidFigure(1, 'difference', units);
  const plain = saidFigure(recipe.additiveByPlainVolumesL, 'volume', units);
  return {
    sure:
      `${formatFigure(poured.resultVolumePercent, 1)} % of pure glycol by volume${product} ${roundingText(answer, units)}. ` +
      `Freezing: ASHRAE table, other published tables lie within ${agree} at this strength; shown rounded towards warmer. ` +
      `Boiling: Raoult’s law with published vapour pressures, within ${one}. ` +
      `By plain volumes it would be ${plain} of product; mass is what is kept here.`,
    assumed: inUnits(assumedText(answer.assumptions, answer.warnings), units),
    sources: answer.sources,
  };
}
