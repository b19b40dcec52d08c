import { MELINDER, MELINDER_MAX_MASS_FRACTION, type Coefficients } from '../data/melinder.ts';
import { PURE_GLYCOL_KG_PER_L, WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Glycol } from '../glycol.ts';

const TABLE_END = MELINDER_MAX_MASS_FRACTION;

/** Density of glycol and water weighed as if they did not shrink on mixing. */
function unmixedKgPerL(glycol: Glycol, massFraction: number): number {
  return 1 / (massFraction / PURE_GLYCOL_KG_PER_L[glycol] + (1 - massFraction) / WATER_KG_PER_L);
}

function unmixedGlycolShare(glycol: Glycol, massFraction: number): number {
  return (massFraction / PURE_GLYCOL_KG_PER_L[glycol]) * unmixedKgPerL(glycol, massFraction);
}

function collapse(coefficients: Coefficients, t: number, power: number): number {
  return coefficients.reduceRight((sum, row) => sum * t + (row[power] ?? 0), 0);
}

function horner(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

/** At a fixed temperature only powers of the mass fraction remain: six multiplications instead of twenty-four. */
function polynomialAt20(glycol: Glycol): readonly number[] {
  const { baseK, densityKgPerM3, baseMassFraction } = MELINDER[glycol];
  const powers = Array.from({ length: 6 }, (_unused, power) => collapse(densityKgPerM3, 20 + 273.15 - baseK, power));
  const scale = WATER_KG_PER_L / horner(powers, -baseMassFraction);
  return powers.map((coefficient) => coefficient * scale);
}

const AT_20: Readonly<Record<Glycol, readonly number[]>> = {
  ethylene: polynomialAt20('ethylene'),
  propylene: polynomialAt20('propylene'),
};

function insideTable(glycol: Glycol, massFraction: number): number {
  return horner(AT_20[glycol], massFraction - MELINDER[glycol].baseMassFraction);
}

function shrinkShare(density: number, unmixed: number): number {
  return 1 - unmixed / density;
}

/**
 * Density at 20 °C of any mixture, from water to pure glycol.
 *
 * Up to 60 mass % Melinder's polynomial. Above, where only products are (never a mixture in a car), the shrink on
 * mixing is carried on from its value there to nothing at pure glycol, as the product of the two volume shares.
 *
 * @param glycol Which glycol
 * @param massFraction Mass fraction of glycol, 0 to 1
 * @returns Density in kg/L
 * @example densityAt20('ethylene', 1) // 1.1135
 */
export function densityAt20(glycol: Glycol, massFraction: number): number {
  if (massFraction <= TABLE_END) return insideTable(glycol, massFraction);
  const shrinkAtEnd = shrinkShare(insideTable(glycol, TABLE_END), unmixedKgPerL(glycol, TABLE_END));
  const endShare = unmixedGlycolShare(glycol, TABLE_END);
  const share = unmixedGlycolShare(glycol, massFraction);
  const shrink = (shrinkAtEnd * share * (1 - share)) / (endShare * (1 - endShare));
  return unmixedKgPerL(glycol, massFraction) / (1 - shrink);
}
