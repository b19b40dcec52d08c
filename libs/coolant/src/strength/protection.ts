import { formatFigure } from '#libs/units';
import { type Glycol } from '../glycol.ts';
import { refuse, type Grounds, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { type AdditiveInput } from './additive.ts';
import { productPercent } from './product-percent.ts';
import { shownProtection } from './shown-protection.ts';
import { strengthWarnings, type ProductLimits } from './strength-warnings.ts';
import { type Strength, type StrengthInput } from './strength.ts';
import { toAdditive } from './to-additive.ts';
import { toStrength } from './to-strength.ts';

/** A strength with what it means: protection as it may be shown, share of product where the product is known. */
export interface Protection extends Strength, Grounds {
  /** Freezing point in whole °C, rounded towards warmer. */
  readonly shownFreezingPointC: number;
  /** Volume % of product; null where the product isn't known or is ready-mixed. */
  readonly productPercent: number | null;
}

export interface ProtectionInput extends StrengthInput {
  readonly glycol: Glycol;
  /** The product, if its share is wanted beside that of pure glycol. */
  readonly product?: AdditiveInput | undefined;
  readonly limits?: ProductLimits | undefined;
}

const TABLE_ASSUMPTION =
  'Pure glycol in water. Volume % is that of the published table; the freezing point is where the first ice forms, a block bursts at a lower temperature.';

/**
 * What a mixture protects from, by its strength. Serves as the inverse too: given a freezing point it tells the strength.
 *
 * @param input Glycol and exactly one of volume %, mass % and freezing point (dilute side)
 * @returns All three, warnings and sources; refused beyond the published table
 * @example protection({ glycol: 'ethylene', volumePercent: 47.6 }) // { ok: true, freezingPointC: -33.8, massPercent: 50, … }
 */
export function protection(input: ProtectionInput): Outcome<Protection> {
  const found = toStrength(input.glycol, input, { field: '' });
  if (!found.ok) return found;
  const { strength } = found;
  const assumptions = [TABLE_ASSUMPTION];
  const product = input.product === undefined ? undefined : toAdditive(input.glycol, input.product);
  if (product?.ok === false) {
    return refuse({ ...product.problem, field: (product.problem.field ?? 'additive').replace(/^additive/, 'product') });
  }
  const percent = product && strength.massPercent !== null ? productPercent(strength.massPercent, product.additive) : null;
  if (percent !== null) assumptions.push(`${formatFigure(percent, 1)} % of product, measured apart at 20 °C.`);
  return {
    ok: true,
    ...strength,
    shownFreezingPointC: shownProtection(strength.freezingPointC, { unit: '°C' }),
    productPercent: percent,
    assumptions: [...assumptions, ...(product?.assumptions ?? [])],
    warnings: [...strengthWarnings(strength, { percent, limits: input.limits }), ...(product?.warnings ?? [])],
    sources: [SOURCE.freezing, SOURCE.strengthLimits],
  };
}
