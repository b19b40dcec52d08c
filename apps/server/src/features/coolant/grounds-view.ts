import { type Caution, type CautionMoment, CAUTIONS } from '#libs/coolant';
import type { UnitPreference } from '#libs/units';
import { inUnits } from './units/in-units.ts';

/** What stands under every computed answer. */
export interface GroundsView {
  readonly sure: string;
  readonly assumed: string;
  readonly sources: readonly string[];
}

export interface CautionView {
  readonly bold: string;
  readonly text: string;
}

const BOLD: Readonly<Record<CautionMoment, string>> = {
  opening: 'Hot and under pressure.',
  handling: 'Toxic and sweet-tasting.',
  spill: 'Spills.',
  waste: 'Used coolant.',
  running: 'Engine running.',
  lifting: 'Lifting.',
};

export const THE_MANUAL_RULES = 'The vehicle maker’s manual and the product’s label rule.';

/** The cautions of an act, one plate each; what is spilt and what is drained share one. */
export function cautionsFor(moments: readonly CautionMoment[], units: UnitPreference): readonly CautionView[] {
  const textOf = (moment: CautionMoment): string =>
    CAUTIONS.filter((caution: Caution) => caution.moment === moment)
      .map(({ text }) => inUnits(text, units))
      .join(' ');
  const isJoined = moments.includes('spill') && moments.includes('waste');
  return moments
    .filter((moment) => !(isJoined && moment === 'waste'))
    .map((moment) =>
      isJoined && moment === 'spill'
        ? { bold: 'Spills and used coolant.', text: `${textOf('spill')} ${textOf('waste')}` }
        : { bold: BOLD[moment], text: textOf(moment) },
    );
}

/** Nothing is said twice: what a warning says already is no assumption besides. */
export const assumedText = (assumptions: readonly string[], warnings: readonly { readonly text: string }[]): string =>
  assumptions.filter((text) => !warnings.some((warning) => warning.text.startsWith(text))).join(' ');
