import type { CardState } from '#libs/checklist';
import {
  type DocumentAdjustment,
  type DraftLine,
  draftLines,
  type DraftedWork,
  type Totals,
  totals,
  type VatCategory,
} from '#libs/invoicing';
import { Decimal, sumAmounts, toAmount } from '#libs/money';
import type { Workshop } from '../../platform/workshop-facts.ts';
import { type Deduction, deductionOf } from './deposits/deduction.ts';
import { type EditedLine, withEdits } from './draft-edits.ts';
import { badDraft, beyondAnySum } from './invoices.errors.ts';
import type { Adjustment, BillFacts } from './job-bill.repository.ts';
import { jobWork } from './job-work.ts';

export interface Draft {
  facts: BillFacts;
  card: CardState;
  workshop: Workshop;
  drafted: DraftedWork;
  lines: EditedLine[];
  allowances: DocumentAdjustment[];
  charges: DocumentAdjustment[];
  /** Of the work, before anything that was paid ahead is taken off. */
  totals: Totals;
  deduction: Deduction;
  /** What is left to pay: the work less what was paid ahead. */
  due: Totals;
}

const NOTHING: Totals = {
  lines: [],
  lineTotal: '0.00',
  allowanceTotal: '0.00',
  chargeTotal: '0.00',
  taxExclusive: '0.00',
  vat: [],
  vatTotal: '0.00',
  taxInclusive: '0.00',
  prepaid: '0.00',
  rounding: '0.00',
  payable: '0.00',
};

const MOST = '99999999.99';

/** Taken off or put on the whole document, as the library reads it. */
function adjustmentsOf(adjustments: readonly Adjustment[], kind: Adjustment['kind']): DocumentAdjustment[] {
  return adjustments
    .filter((adjustment) => adjustment.kind === kind)
    .map(({ amount, reason, vatCategory, vatRatePct }) => ({
      amount,
      reason,
      vatCategory: vatCategory as VatCategory,
      vatRate: vatCategory === 'O' ? null : vatRatePct,
    }));
}

interface Summed {
  lines: readonly DraftLine[];
  allowances?: readonly DocumentAdjustment[];
  charges?: readonly DocumentAdjustment[];
  prepaid?: string;
  rounding?: string | undefined;
}

/** An invoice has at least one line; a draft may have none yet. */
function sumsOf({ lines, allowances = [], charges = [], prepaid = '0', rounding }: Summed): Totals {
  if (lines.length === 0) return NOTHING;
  const sums = totals({
    lines: lines.map(({ quantity, unitPrice, vatCategory, vatRate, allowances: off = [] }) => ({
      quantity,
      unitPrice,
      vatCategory,
      vatRate,
      allowances: off.map(({ amount }) => amount),
    })),
    allowances: allowances.map(({ amount, vatCategory, vatRate }) => ({ amount, vatCategory, vatRate })),
    charges: charges.map(({ amount, vatCategory, vatRate }) => ({ amount, vatCategory, vatRate })),
    prepaid,
    ...(rounding === undefined ? {} : { rounding }),
  });
  if (!sums.ok) throw badDraft(sums.errors);
  if (new Decimal(sums.value.taxInclusive).gt(MOST)) throw beyondAnySum();
  return sums.value;
}

/** The draft of what is known; pure. */
export function draftOf({ facts, card, workshop }: Pick<Draft, 'facts' | 'card' | 'workshop'>): Draft {
  const drafted = draftLines(jobWork(facts, card, workshop));
  if (!drafted.ok) throw badDraft(drafted.errors);
  const lines = withEdits(drafted.value.lines, facts.edits);
  const allowances = adjustmentsOf(facts.adjustments, 'allowance');
  const charges = adjustmentsOf(facts.adjustments, 'charge');
  const sums = sumsOf({ lines, allowances, charges });
  const deduction = deductionOf(facts, { depositForm: workshop.depositForm, work: sums.vat });
  if (!deduction.ok) throw badDraft(deduction.errors);
  const { lines: off, prepayments, rounding } = deduction.value;
  const due = sumsOf({
    lines: [...lines, ...(lines.length === 0 ? [] : off)],
    allowances,
    charges,
    prepaid: toAmount(sumAmounts(prepayments.map(({ amount }) => amount))),
    rounding,
  });
  return { facts, card, workshop, drafted: drafted.value, lines, allowances, charges, totals: sums, deduction: deduction.value, due };
}
