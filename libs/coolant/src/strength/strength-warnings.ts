import { formatFigure } from '#libs/units';
import { type Warning } from '../outcome.ts';
import { shownProtection } from './shown-protection.ts';
import { type Strength } from './strength.ts';

/** The product's own limits in volume % of product, from its label; common practice where the label says nothing. */
export interface ProductLimits {
  readonly minimumPercent?: number | undefined;
  readonly maximumPercent?: number | undefined;
}

const USUAL_MINIMUM_PERCENT = 33;
const USUAL_MAXIMUM_PERCENT = 60;

/** Less glycol than this is plain water. */
const PLAIN_WATER_PERCENT = 0.05;

/**
 * What to mind about a strength: too weak against corrosion, too strong to be useful, beyond the table.
 *
 * The limits are of product. Where the product isn't known its share is taken as the glycol's, which warns early.
 *
 * @param strength The mixture
 * @param product Volume % of product where known, and the label's limits
 * @example strengthWarnings(weak, { percent: 25 })[0].code // 'below-corrosion-limit'
 */
export function strengthWarnings(
  strength: Strength,
  product: { readonly percent: number | null; readonly limits?: ProductLimits | undefined },
): readonly Warning[] {
  const minimum = product.limits?.minimumPercent ?? USUAL_MINIMUM_PERCENT;
  const maximum = product.limits?.maximumPercent ?? USUAL_MAXIMUM_PERCENT;
  const percent = product.percent ?? strength.volumePercent;
  const ofWhat = product.percent === null ? 'glycol (the product may hold water, so its own share is higher)' : 'product';
  const warnings: Warning[] = [];
  if (strength.isAtLeast) {
    const shown = formatFigure(shownProtection(strength.freezingPointC, { unit: '°C' }), 0);
    warnings.push({
      code: 'at-least',
      text: `Stronger than the published table: protects to at least ${shown} °C. No more is credited.`,
    });
  }
  if (strength.volumePercent < PLAIN_WATER_PERCENT) {
    warnings.push({ code: 'no-protection', text: 'Plain water: no protection from frost or corrosion.' });
  }
  if (percent < minimum) {
    warnings.push({
      code: 'below-corrosion-limit',
      text:
        `${formatFigure(percent, 1)} % of ${ofWhat} is below the ${formatFigure(minimum, 0)} % that a product usually needs ` +
        `to protect from corrosion. The product label rules.`,
    });
  }
  if (percent > maximum) {
    warnings.push({
      code: 'above-useful-maximum',
      text:
        `${formatFigure(percent, 1)} % of ${ofWhat} is above the useful maximum of ${formatFigure(maximum, 0)} %: ` +
        `it carries less heat and soon protects less from frost. The product label rules.`,
    });
  }
  return warnings;
}
