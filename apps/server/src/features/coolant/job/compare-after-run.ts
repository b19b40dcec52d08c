import type { CardState } from '#libs/checklist';
import { compareStrength, impliedSystem, type ImpliedSystem, pouredStrength, type StrengthComparison } from '#libs/coolant';
import type { ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import type { ShelfProduct } from '../../coolant-shelf/coolant-shelf.service.ts';
import { additiveOf } from '../refill/additive-of.ts';
import { residualOf } from '../refill/residual-of.ts';
import { isOpenedAgain } from './known-figures.ts';

export type AfterRun =
  | { readonly kind: 'not-read' }
  | { readonly kind: 'only-read'; readonly measuredC: number; readonly why: string }
  | {
      readonly kind: 'compared';
      readonly measuredC: number;
      readonly comparison: StrengthComparison;
      readonly implied: ImpliedSystem | null;
    };

/** The reading after the run beside what the amounts really poured come to. */
export function compareAfterRun(state: CardState, form: ReadForm, products: readonly ShelfProduct[]): AfterRun {
  const measuredC = state.facts.numbers['strengthFreezingC']?.value;
  if (measuredC === undefined) return { kind: 'not-read' };
  const only = (why: string): AfterRun => ({ kind: 'only-read', measuredC, why });
  const { holds, out, missing = 0 } = form.figures;
  const { filledProductL, filledWaterL, filledKeptL, filledL } = state.facts;
  if (filledL === 0) return only('Nothing is on the card of what was poured.');
  if (isOpenedAgain(state)) return only('The system was opened again: what was in it when it was last filled is not on the card.');
  if (holds === undefined || out === undefined) return only('What the system holds and what came out must be known first.');
  const chosen = additiveOf(form, products);
  if (!chosen.ok) return only('The product must be known first.');
  const residual = residualOf(form, chosen.value);
  const spaceL = Math.min(holds, out + missing);
  const staysL = holds - spaceL;
  if (!residual.ok && staysL + filledKeptL > 0) return only('The strength of what stays in must be known first.');
  const strength = residual.ok ? residual.value.strength : { volumePercent: 0 };
  const glycol = glycolOf(form);
  const { additive } = chosen.value;
  const poured = { additive, additiveL: filledProductL, waterL: filledWaterL };
  const computed = pouredStrength({ glycol, residualL: staysL + filledKeptL, residual: strength, ...poured });
  if (!computed.ok) return only(computed.problem.message);
  const comparison = compareStrength({
    glycol,
    computed: { massPercent: computed.massPercent },
    measured: { freezingPointC: measuredC },
  });
  if (!comparison.ok) return only(comparison.problem.message);
  const isApart = comparison.verdict !== 'agree' && staysL > 0;
  const implied = isApart
    ? impliedSystem({
        glycol,
        systemVolumeL: holds,
        spaceL: Math.max(0, spaceL - filledKeptL),
        residual: strength,
        ...poured,
        measured: { freezingPointC: measuredC },
      })
    : undefined;
  return { kind: 'compared', measuredC, comparison, implied: implied?.ok === true ? implied : null };
}
