import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { CardState } from '#libs/checklist';
import type { DbClient } from '#libs/db';
import { draftLines, type DraftedWork, type Totals, totals } from '#libs/invoicing';
import { Decimal } from '#libs/money';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { type Workshop, WorkshopFacts } from '../../platform/workshop-facts.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { type EditedLine, newTypedOrigin, withEdits } from './draft-edits.ts';
import type { EditLineDto } from './dto/edit-line.dto.ts';
import { badDraft, badFigure, beyondAnySum, issuedAlready, noJob } from './invoices.errors.ts';
import { type BillFacts, JobBillRepository } from './job-bill.repository.ts';
import { jobWork } from './job-work.ts';

export interface Draft {
  facts: BillFacts;
  card: CardState;
  workshop: Workshop;
  drafted: DraftedWork;
  lines: EditedLine[];
  totals: Totals;
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

/** An invoice has at least one line; a draft may have none yet. */
function sumsOf(lines: readonly EditedLine[]): Totals {
  if (lines.length === 0) return NOTHING;
  const sums = totals({
    lines: lines.map(({ quantity, unitPrice, vatCategory, vatRate }) => ({ quantity, unitPrice, vatCategory, vatRate })),
  });
  if (!sums.ok) throw badDraft(sums.errors);
  if (new Decimal(sums.value.taxInclusive).gt(MOST)) throw beyondAnySum();
  return sums.value;
}

/** The draft is never stored: it is computed from the job, with the desk's changes laid over it. */
@Injectable()
export class DraftsService {
  constructor(
    private readonly bills: JobBillRepository,
    private readonly cards: JobCards,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async draft(jobId: string, db?: DbClient): Promise<Draft> {
    const facts = await this.bills.facts(jobId, db);
    const workshop = await this.workshop.get(db);
    if (!facts) throw noJob();
    const { state: card } = await this.cards.open(jobId, db);
    const drafted = draftLines(jobWork(facts, card, workshop));
    if (!drafted.ok) throw badDraft(drafted.errors);
    const lines = withEdits(drafted.value.lines, facts.edits);
    return { facts, card, workshop, drafted: drafted.value, lines, totals: sumsOf(lines) };
  }

  /** Changes, adds or takes out one line; why is kept with it. */
  async edit(jobId: string, input: EditLineDto): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.bills.lockJob(tx, jobId))) throw noJob();
      const { facts, lines, workshop } = await this.draft(jobId, tx);
      const [issued] = facts.invoices.filter(({ kind }) => kind === 'invoice');
      if (issued) throw issuedAlready(issued.number);
      const before = lines.find(({ origin }) => origin === input.origin);
      if (input.origin !== '' && !before) throw badFigure('origin', 'This line is no longer in the draft. Look at it again.');
      await this.bills.saveEdit(tx, jobId, {
        origin: before?.origin ?? newTypedOrigin(randomUUID()),
        kind: before?.kind ?? 'other',
        description: input.description,
        quantity: input.quantity.replace(',', '.'),
        unit: before?.unit ?? 'C62',
        unitPrice: input.unitPrice.replace(',', '.'),
        vatCategory: before?.vatCategory ?? 'S',
        vatRatePct: before?.vatRate ?? workshop.vatRatePct,
        changedWhy: input.why,
        isRemoved: input.remove === 'on',
        at: this.clock.now(),
      });
      // The changed draft must still compute, or the change is not kept.
      await this.draft(jobId, tx);
      await this.audit.record(tx, {
        action: 'changed',
        subject: 'draft',
        subjectId: jobId,
        after: { origin: input.origin, why: input.why },
      });
      return null;
    });
  }
}
