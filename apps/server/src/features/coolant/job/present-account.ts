import { fillAccount as drawAccount, type FillAccountData, type FillAmount, type Verdict } from '#libs/charts';
import type { CardState } from '#libs/checklist';
import { type FillAccount, type MorningVerdict, type Outcome, type Poured, pouredByStage, type ShortfallVerdict } from '#libs/coolant';
import type { BenchContext } from '../bench-context.ts';
import { drawn, type DrawnView } from '../drawn.ts';
import type { ReadForm } from '../form/bench-field.ts';
import { resultFigure, type ResultFigure } from '../result-figure.ts';
import { inUnits } from '../units/in-units.ts';
import { saidFigure } from '../units/measure.ts';
import { type WarningView, warningViews } from '../warning-views.ts';

export interface AccountView {
  readonly lead: string;
  readonly drawing: DrawnView;
  readonly figures: readonly ResultFigure[];
  readonly warnings: readonly WarningView[];
  readonly notes: readonly string[];
}

const SHORTFALL: Readonly<Record<ShortfallVerdict, { verdict?: Verdict; words: string }>> = {
  'not-yet': { words: 'Nothing has been filled yet.' },
  within: { verdict: 'fits', words: 'What went in agrees with what came out.' },
  short: { verdict: 'does-not', words: 'Less went in than came out: air may be trapped.' },
  over: { verdict: 'does-not', words: 'More went in than there was space for.' },
};
const MORNING: Readonly<Record<MorningVerdict, Verdict | undefined>> = {
  'not-yet': undefined,
  within: 'fits',
  'air-came-out': 'unsure',
  'look-for-leak': 'does-not',
};

const WIDTHS = { wide: 880, narrow: 318 };

function dataOf({ state, form, shrinkL }: { state: CardState; form: ReadForm; shrinkL: number }, account: FillAccount): FillAccountData {
  const { numbers, fills, levels } = state.facts;
  const drained = numbers['drainedL'];
  const amount = (volumeL: number | undefined, isAbout = false): FillAmount | null => (volumeL === undefined ? null : { volumeL, isAbout });
  const poured = pouredByStage(fills);
  const sum = (stage: Poured | undefined): FillAmount | null => amount(stage?.volumeL, stage?.isAbout);
  const morning = MORNING[account.morning];
  const { verdict } = SHORTFALL[account.shortfall];
  const missingL = numbers['missingOnArrivalL']?.value;
  return {
    holdsL: form.figures['holds'] ?? null,
    holdsKnownBy: form.states['holds'] === 'assumed' ? 'assumed' : 'measured',
    missingOnArrival: amount(missingL === undefined ? undefined : Math.max(0, missingL), levels['missingOnArrivalL'] === null),
    drainedKept: account.keptL > 0 ? amount(account.keptL, drained?.about) : null,
    drainedWaste: amount(account.wasteL, drained?.about),
    firstFill: sum(poured.firstFill),
    afterShortRun: sum(poured.afterShortRun),
    afterRunHot: sum(poured.afterRunHot),
    nextMorning: sum(poured.nextMorning),
    shrinkL,
    toleranceL: account.shortfallToleranceL,
    morningLimitL: account.morningToleranceL,
    ...(verdict ? { verdict } : {}),
    ...(morning ? { morningVerdict: morning } : {}),
  };
}

/** What came out, what went in, and what the difference means, with the tolerances that it was judged by. */
export function presentAccount(
  found: Outcome<FillAccount> | undefined,
  { context, ...card }: { state: CardState; form: ReadForm; shrinkL: number; context: BenchContext },
): AccountView | { readonly lead: string; readonly refusal?: string } {
  const { units } = context;
  if (!found) return { lead: 'Nothing has been drained on this card yet.' };
  if (!found.ok) return { lead: 'The card’s volumes contradict each other.', refusal: inUnits(found.problem.message, units) };
  const volume = (value: number, word: string, said: string): ResultFigure => resultFigure(value, 'volume', { units, word, said });
  const data = { ...dataOf(card, found), unit: units.volume };
  return {
    lead: SHORTFALL[found.shortfall].words,
    drawing: drawn('account', WIDTHS, (options) => drawAccount(data, options)),
    figures: [
      volume(found.spaceL, 'space to fill', 'missing and drained'),
      ...(found.shortfall === 'not-yet'
        ? []
        : [volume(found.filledL, 'filled', 'shrink on mixing taken off'), volume(found.productUsedL, 'product used', 'for the invoice')]),
      volume(found.wasteL, 'waste', 'for the drum'),
      ...(found.keptL > 0 ? [volume(found.keptLeftL, 'kept, left over', `of ${saidFigure(found.keptL, 'volume', units)} kept`)] : []),
    ],
    warnings: warningViews(found.warnings, units),
    notes: found.assumptions.map((text) => inUnits(text, units)),
  };
}
