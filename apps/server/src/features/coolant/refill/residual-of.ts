import { type Glycol, recipe, refractometer, type StrengthInput, type Warning } from '#libs/coolant';
import type { ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import type { Chosen } from './additive-of.ts';
import type { Asked } from './asked.ts';

/** Strength of what stays in, with what its instrument gives to think of. */
export interface Residual {
  readonly strength: StrengthInput;
  readonly isAssumed: boolean;
  readonly assumptions: readonly string[];
  readonly warnings: readonly Warning[];
}

const plainly = (strength: StrengthInput): Asked<Residual> => ({
  ok: true,
  value: { strength, isAssumed: false, assumptions: [], warnings: [] },
});

/** Warnings about the mixture that is about to be changed say nothing: only those about the reading count. */
const ABOUT_READING = new Set(['wrong-scale', 'scale-unknown', 'estimate', 'sample-not-at-20']);

function byScale(glycol: Glycol, { figures, choices }: ReadForm): Asked<Residual> {
  const reading = figures['staysReading'];
  if (reading === undefined) return { ok: false, field: 'staysReading' };
  const scale = choices['scale'];
  const scaleGlycol = scale === 'ethylene' || scale === 'propylene' ? scale : glycol;
  const found = refractometer({ glycol, scaleGlycol, freezingPointC: reading });
  if (!found.ok) return { ok: false, field: 'staysReading', problem: found.problem };
  const { massPercent, volumePercent } = found;
  return {
    ok: true,
    value: {
      strength: massPercent === null ? { volumePercent } : { massPercent },
      isAssumed: false,
      assumptions: found.assumptions,
      warnings: found.warnings.filter(({ code }) => ABOUT_READING.has(code)),
    },
  };
}

/** What a share of product comes to: one litre of it mixed, by the same mass balance as the refill. */
function byProduct(glycol: Glycol, { figures }: ReadForm, { additive }: Chosen): Asked<Residual> {
  const productPercent = figures['staysProduct'];
  if (productPercent === undefined) return { ok: false, field: 'staysProduct' };
  const mixed = recipe({ glycol, systemVolumeL: 1, additive, target: { productPercent } });
  if (!mixed.ok) return { ok: false, field: 'staysProduct', problem: mixed.problem };
  return plainly(
    mixed.resultMassPercent === null ? { volumePercent: mixed.resultVolumePercent } : { massPercent: mixed.resultMassPercent },
  );
}

/** Strength of what stays in the block, by whichever way it is given. */
export function residualOf(form: ReadForm, chosen: Chosen): Asked<Residual> {
  const glycol = glycolOf(form);
  switch (form.choices['stays'] ?? '') {
    case 'percent': {
      const volumePercent = form.figures['staysPercent'];
      return volumePercent === undefined ? { ok: false, field: 'staysPercent' } : plainly({ volumePercent });
    }
    case 'product':
      return byProduct(glycol, form, chosen);
    case 'water':
      return { ok: true, value: { strength: { volumePercent: 0 }, isAssumed: true, assumptions: [], warnings: [] } };
    default:
      return byScale(glycol, form);
  }
}
