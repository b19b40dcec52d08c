import { formatFigure, formatTemperature } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { bisect } from '../numeric/bisect.ts';
import { refuse, type Outcome } from '../outcome.ts';
import { type ProductLabel } from './additive.ts';
import { massPercentOfParts } from './mass-percent-of-parts.ts';
import { strengthOfMass } from './strength-of-mass.ts';
import { toStrength } from './to-strength.ts';

/**
 * How much colder than pure glycol a label may promise and still be taken as pure. Published freezing points of the
 * same mixture differ by up to 3 K, and this library keeps to the cautious ones.
 */
const LABEL_SLACK_K = 3;

/**
 * The effective glycol content of a product, from its own label: "1 part to 1 part of water protects to −37 °C".
 *
 * Why: concentrate is never pure glycol, and its label is the only honest source for how much is in it.
 *
 * @param glycol Which glycol
 * @param label Parts by volume and the freezing point of that mixture
 * @returns Mass % of glycol in the product, and whether the label promised more than pure glycol gives by the published
 *   table; refused where it promises over 3 K more
 * @example labelContent('ethylene', { partsProduct: 1, partsWater: 1, freezingPointC: -36 }) // massPercent 98.1
 */
export function labelContent(glycol: Glycol, label: ProductLabel): Outcome<{ massPercent: number; isTakenAsPure: boolean }> {
  const problem =
    checkNumber(label.partsProduct, { field: 'label.partsProduct', name: 'The parts of product', unit: '', above: 0, most: 1000 }) ??
    checkNumber(label.partsWater, { field: 'label.partsWater', name: 'The parts of water', unit: '', least: 0, most: 1000 }) ??
    checkNumber(label.freezingPointC, { field: 'label.freezingPointC', name: "The label's freezing point", unit: '°C', most: -1 });
  if (problem) return refuse(problem);
  const parts = { product: label.partsProduct, water: label.partsWater };
  const mixture = toStrength(glycol, { freezingPointC: label.freezingPointC }, { field: 'label' });
  if (!mixture.ok) return mixture;
  const wanted = mixture.strength.massPercent ?? Number.NaN;
  const pure = massPercentOfParts(glycol, 100, parts);
  if (wanted <= pure) {
    const massPercent = bisect((content) => massPercentOfParts(glycol, content, parts), wanted, { low: 0, high: 100 });
    return { ok: true, massPercent, isTakenAsPure: false };
  }
  const pureFreezingPointC = strengthOfMass(glycol, pure).freezingPointC;
  if (label.freezingPointC >= pureFreezingPointC - LABEL_SLACK_K) return { ok: true, massPercent: 100, isTakenAsPure: true };
  return refuse({
    code: 'label-impossible',
    kind: 'impossible',
    field: 'label.freezingPointC',
    limit: pureFreezingPointC,
    message:
      `${formatFigure(parts.product, 1)} to ${formatFigure(parts.water, 1)} parts of water would freeze at ` +
      `${formatTemperature(pureFreezingPointC, { unit: '°C', decimals: 1 })} even with pure glycol, and the label says ` +
      `${formatTemperature(label.freezingPointC, { unit: '°C', decimals: 1 })}. Check the parts, the temperature and which glycol it is.`,
  });
}
