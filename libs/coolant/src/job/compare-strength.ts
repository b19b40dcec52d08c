import { formatFigure, formatTemperature } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Grounds, type Outcome, type Refused, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { shownProtection } from '../strength/shown-protection.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { type Strength, type StrengthInput } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';

export interface CompareStrengthInput {
  readonly glycol: Glycol;
  /** What the recipe reckoned. */
  readonly computed: StrengthInput;
  /** What the instrument says after the hot run. */
  readonly measured: StrengthInput;
  /** So many volume % apart still agree; 3 where left out. */
  readonly toleranceVolumePercent?: number | undefined;
}

export interface StrengthComparison extends Grounds {
  readonly computed: Strength;
  readonly measured: Strength;
  /** Measured less computed. */
  readonly differenceVolumePercent: number;
  /** Measured less computed; positive: it freezes warmer than reckoned. */
  readonly differenceFreezingK: number;
  readonly toleranceVolumePercent: number;
  readonly verdict: 'agree' | 'measured-weaker' | 'measured-stronger';
  readonly text: string;
}

/** A hand refractometer reads to about 1 K, the published tables disagree by up to 3 K. Common practice, no source. */
const DEFAULT_TOLERANCE_PERCENT = 3;

function textOf(verdict: StrengthComparison['verdict'], measured: Strength): string {
  const keeps = formatTemperature(shownProtection(measured.freezingPointC, { unit: '°C' }), { unit: '°C' });
  switch (verdict) {
    case 'agree':
      return `Computed and measured agree. By the reading it is safe to ${keeps}.`;
    case 'measured-weaker':
      return `Weaker than computed: more stayed in the block than reckoned, what stayed was weaker, or it has not mixed yet. By the reading it is safe to ${keeps} only.`;
    case 'measured-stronger':
      return `Stronger than computed: less stayed in the block than reckoned, what stayed was stronger, or it has not mixed yet. By the reading it is safe to ${keeps}.`;
  }
}

function inField(refused: Refused, field: string): Refused {
  return refuse({ ...refused.problem, field: refused.problem.field ?? field });
}

/**
 * The strength that was computed beside the one that was measured after the hot run. Apart, the capacity or what stayed
 * in was not what was reckoned with: worth learning for this vehicle.
 *
 * @param input Glycol, both strengths in any one way, tolerance in volume %
 * @returns The difference with its verdict; the measured figure is the one that protects
 * @example compareStrength({ glycol: 'ethylene', computed: { volumePercent: 47 }, measured: { freezingPointC: -25 } }).verdict // 'measured-weaker'
 */
export function compareStrength(input: CompareStrengthInput): Outcome<StrengthComparison> {
  const { glycol, toleranceVolumePercent = DEFAULT_TOLERANCE_PERCENT } = input;
  const problem = checkNumber(toleranceVolumePercent, {
    field: 'toleranceVolumePercent',
    name: 'The tolerance',
    unit: '%',
    least: 0,
    most: 50,
  });
  if (problem) return refuse(problem);
  const computed = toStrength(glycol, input.computed, { field: 'computed' });
  if (!computed.ok) return inField(computed, 'computed');
  const measured = toStrength(glycol, input.measured, { field: 'measured' });
  if (!measured.ok) return inField(measured, 'measured');
  const differenceVolumePercent = measured.strength.volumePercent - computed.strength.volumePercent;
  const isApart = Math.abs(differenceVolumePercent) > toleranceVolumePercent;
  const side = differenceVolumePercent < 0 ? 'measured-weaker' : 'measured-stronger';
  const verdict = isApart ? side : 'agree';
  const text = textOf(verdict, measured.strength);
  const differs: Warning[] = isApart ? [{ code: 'measured-differs', text }] : [];
  return {
    ok: true,
    computed: computed.strength,
    measured: measured.strength,
    differenceVolumePercent,
    differenceFreezingK: measured.strength.freezingPointC - computed.strength.freezingPointC,
    toleranceVolumePercent,
    verdict,
    text,
    assumptions: [`Up to ${formatFigure(toleranceVolumePercent, 1)} volume % apart counts as agreeing (common practice, no source).`],
    warnings: [...differs, ...strengthWarnings(measured.strength, { percent: null })],
    sources: [SOURCE.freezing],
  };
}
