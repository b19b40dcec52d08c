import { shownProtection } from '#libs/coolant';
import { formatFigure, type UnitPreference } from '#libs/units';
import { resultFigure, type ResultFigure, textFigure } from '../result-figure.ts';
import { saidFigure } from '../units/measure.ts';
import type { ReadyRefill } from './reckon-refill.ts';

/** What truly comes of the rounded jugs: of pure glycol and of product, never one for the other. */
export function refillFigures({ recipe }: ReadyRefill, units: UnitPreference): readonly ResultFigure[] {
  const poured = recipe.roundedJugs ?? recipe;
  const freezes = formatFigure(shownProtection(poured.resultFreezingPointC, { unit: units.temperature }), 0);
  const asked = `asked: ${saidFigure(recipe.targetFreezingPointC, 'temperature', units)}`;
  const product = poured.resultProductPercent;
  return [
    resultFigure(poured.resultVolumePercent, 'percent', { units, word: 'of pure glycol', said: 'by volume' }),
    ...(product === null ? [] : [resultFigure(product, 'percent', { units, word: 'of product', said: '50: half and half' })]),
    textFigure(freezes, units.temperature, { word: 'safe to', said: asked }),
    resultFigure(recipe.residualL, 'volume', { units, word: 'stays in', said: 'of the old coolant' }),
    resultFigure(recipe.spaceL, 'volume', { units, word: 'to fill', said: 'drained and missing' }),
  ];
}
