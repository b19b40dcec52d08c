import { formatFigure, formatTemperature, formatTemperatureDifference } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { exactlyOne } from '../checks/exactly-one.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Outcome } from '../outcome.ts';
import { type Additive } from './additive.ts';
import { massPercentOfParts } from './mass-percent-of-parts.ts';
import { type Strength, type StrengthInput } from './strength.ts';
import { toStrength } from './to-strength.ts';

/** What the mixture shall be: a strength of pure glycol, a share of product, or the coldest air it must stand. */
export interface TargetInput extends StrengthInput {
  /** Volume % of product as the trade says it: 50 is half concentrate, half water, measured apart. */
  readonly productPercent?: number | undefined;
  /** Coldest air expected; the target freezes by the margin below it. */
  readonly coldestAirC?: number | undefined;
  /** Margin below the coldest air, K; 5 where left out. */
  readonly marginK?: number | undefined;
}

/** How far below the coldest expected air the mixture shall freeze, where nobody says otherwise. Common practice, no source. */
export const DEFAULT_MARGIN_K = 5;

interface FoundTarget {
  readonly strength: Strength;
  readonly assumptions: readonly string[];
}

function ofProduct(glycol: Glycol, percent: number, additive: Additive): Outcome<FoundTarget> {
  const field = 'target.productPercent';
  const problem = checkNumber(percent, { field, name: 'The share of product', unit: '%', least: 0, most: 100 });
  if (problem) return refuse(problem);
  const massPercent = massPercentOfParts(glycol, additive.massPercent, { product: percent, water: 100 - percent });
  const found = toStrength(glycol, { massPercent }, { field: 'target' });
  if (!found.ok) return refuse({ ...found.problem, field });
  const text = `${formatFigure(percent, 0)} % of product is ${formatFigure(found.strength.volumePercent, 1)} volume % of pure glycol.`;
  return { ok: true, strength: found.strength, assumptions: [text] };
}

function ofColdestAir(glycol: Glycol, coldestAirC: number, marginK: number): Outcome<FoundTarget> {
  const field = 'target.coldestAirC';
  const problem =
    checkNumber(coldestAirC, { field, name: 'The coldest expected air', unit: '°C', least: -90, most: 60 }) ??
    checkNumber(marginK, { field: 'target.marginK', name: 'The margin', unit: 'K', least: 0, most: 50 });
  if (problem) return refuse(problem);
  const freezingPointC = Math.min(0, coldestAirC - marginK);
  const found = toStrength(glycol, { freezingPointC }, { field: 'target' });
  if (!found.ok) return refuse({ ...found.problem, field });
  const air = formatTemperature(coldestAirC, { unit: '°C' });
  const margin = formatTemperatureDifference(marginK, { unit: '°C' });
  const text = `Coldest air ${air} less a margin of ${margin}: it shall not freeze above ${formatTemperature(freezingPointC, { unit: '°C' })}.`;
  return { ok: true, strength: found.strength, assumptions: [text] };
}

/**
 * The strength aimed at, from any one way of giving it.
 *
 * @param glycol Which glycol
 * @param input Exactly one of volume %, mass %, freezing point, % of product, coldest air (with its margin)
 * @param additive The product, needed for % of product
 * @returns The strength with what was assumed; refused beyond the published table
 * @example toTarget('ethylene', { coldestAirC: -25 }, additive) // strength.freezingPointC -30
 */
export function toTarget(glycol: Glycol, input: TargetInput, additive: Additive): Outcome<FoundTarget> {
  const { volumePercent, massPercent, freezingPointC, productPercent, coldestAirC } = input;
  const one = exactlyOne({ volumePercent, massPercent, freezingPointC, productPercent, coldestAirC }, 'target');
  if (one) return refuse(one);
  if (typeof productPercent === 'number') return ofProduct(glycol, productPercent, additive);
  if (typeof coldestAirC === 'number') return ofColdestAir(glycol, coldestAirC, input.marginK ?? DEFAULT_MARGIN_K);
  const found = toStrength(glycol, { volumePercent, massPercent, freezingPointC }, { field: 'target' });
  return found.ok ? { ok: true, strength: found.strength, assumptions: [] } : found;
}
