import { type Caution, type CautionMoment, CAUTIONS } from '#libs/coolant';

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

/** The cautions of an act, one plate each. */
export function cautionsFor(moments: readonly CautionMoment[]): readonly CautionView[] {
  const textOf = (moment: CautionMoment): string =>
    CAUTIONS.filter((caution: Caution) => caution.moment === moment)
      .map(({ text }) => text)
      .join(' ');
  return moments.map((moment) => ({ bold: BOLD[moment], text: textOf(moment) }));
}
