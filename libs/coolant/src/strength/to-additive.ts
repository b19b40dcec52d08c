import { formatFigure } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { exactlyOne } from '../checks/exactly-one.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Outcome, type Refused, type Warning } from '../outcome.ts';
import { additiveMassPercent, additiveVolumePercent } from './additive-volume.ts';
import { type Additive, type AdditiveInput } from './additive.ts';
import { densityAt20 } from './density-at-20.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';
import { labelContent } from './label-content.ts';

/** Concentrate whose content nobody states: 93 mass % is the pessimistic fallback, common practice without a source. */
export const FALLBACK_PRODUCT_MASS_PERCENT = 93;

interface Found {
  readonly additive: Additive;
  readonly assumptions: readonly string[];
  readonly warnings: readonly Warning[];
}

function additiveOfMass(glycol: Glycol, massPercent: number, basis: Additive['basis']): Additive {
  return {
    massPercent,
    volumePercent: additiveVolumePercent(glycol, massPercent),
    densityKgPerL: densityAt20(glycol, massPercent / 100),
    isReadyMixed: massPercent <= FREEZING_CURVE[glycol].endMassPercent,
    basis,
  };
}

function contentText(additive: Additive): string {
  return `${formatFigure(additive.massPercent, 1)} mass % (${formatFigure(additive.volumePercent, 1)} volume %) of pure glycol`;
}

function ofFallback(glycol: Glycol): Found {
  const additive = additiveOfMass(glycol, FALLBACK_PRODUCT_MASS_PERCENT, 'fallback');
  const text = `The product's glycol content is not known: ${FALLBACK_PRODUCT_MASS_PERCENT} mass % is assumed, a pessimistic figure.`;
  return {
    additive,
    assumptions: [text],
    warnings: [{ code: 'content-from-fallback', text: `${text} Take it from the label's own pair.` }],
  };
}

function ofLabel(glycol: Glycol, input: AdditiveInput): Outcome<Found> | undefined {
  if (input.label === undefined) return undefined;
  const content = labelContent(glycol, input.label);
  if (!content.ok) return inAdditive(content);
  const additive = additiveOfMass(glycol, content.massPercent, 'label');
  const warnings: Warning[] = content.isTakenAsPure
    ? [
        {
          code: 'content-taken-as-pure',
          text: 'The label promises more than pure glycol gives by the cautious published table; the product is counted as pure glycol, not as more.',
        },
      ]
    : [];
  return { ok: true, additive, assumptions: [`By its label the product holds ${contentText(additive)}.`], warnings };
}

function inAdditive(refused: Refused): Refused {
  const { field, ...rest } = refused.problem;
  return refuse({ ...rest, field: field === undefined ? 'additive' : `additive.${field}` });
}

function stated(glycol: Glycol, massPercent: number): Outcome<Found> {
  const additive = additiveOfMass(glycol, massPercent, 'stated');
  return { ok: true, additive, assumptions: [`The additive holds ${contentText(additive)}, as stated.`], warnings: [] };
}

/**
 * What is poured in, from any one way of giving its content.
 *
 * @param glycol Which glycol
 * @param input Exactly one of volume %, mass %, the label's pair, or `isContentUnknown`
 * @returns The additive with what was assumed; refused for a waterless fluid, an impossible label, or a freezing point
 * @example toAdditive('ethylene', { volumePercent: 100 }) // { ok: true, additive: { massPercent: 100, … }, … }
 */
export function toAdditive(glycol: Glycol, input: AdditiveInput & { readonly freezingPointC?: unknown }): Outcome<Found> {
  if (input.isWaterless === true) {
    return refuse({
      code: 'waterless-fluid',
      kind: 'impossible',
      field: 'additive',
      message: 'A fluid sold as waterless must not be mixed with water, and no published table covers it. Follow its maker.',
    });
  }
  if (input.freezingPointC !== undefined && input.freezingPointC !== null) {
    return refuse({
      code: 'additive-by-freezing-point',
      kind: 'malformed',
      field: 'additive.freezingPointC',
      message:
        "An additive can't be given by its own freezing point: strong glycol freezes warmer again. " +
        "Give its volume %, its mass %, or the label's pair (parts of product, parts of water, freezing point).",
    });
  }
  const { volumePercent, massPercent, label } = input;
  const isContentUnknown = input.isContentUnknown === true ? true : undefined;
  const one = exactlyOne({ volumePercent, massPercent, label, isContentUnknown }, 'additive');
  if (one) return refuse(one);
  const byLabel = ofLabel(glycol, input);
  if (byLabel) return byLabel;
  if (isContentUnknown === true) return { ok: true, ...ofFallback(glycol) };
  const isVolume = typeof volumePercent === 'number';
  const share = volumePercent ?? massPercent ?? Number.NaN;
  const problem = checkNumber(share, {
    field: isVolume ? 'additive.volumePercent' : 'additive.massPercent',
    name: 'The share of glycol in the additive',
    unit: '%',
    least: 1,
    most: 100,
  });
  if (problem) return refuse(problem);
  return stated(glycol, isVolume ? additiveMassPercent(glycol, share) : share);
}
