import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { DraftChanges } from './draft-changes.repository.ts';
import { newTypedOrigin } from './draft-edits.ts';
import type { Draft } from './draft-of.ts';
import { DraftsService } from './drafts.service.ts';
import type { AdjustmentDto } from './dto/adjustment.dto.ts';
import type { EditLineDto } from './dto/edit-line.dto.ts';
import type { PaperDto } from './dto/paper.dto.ts';
import { badFigure, issuedAlready, noJob, takenBackAlready } from './invoices.errors.ts';
import { JobBillRepository } from './job-bill.repository.ts';
import { workshopTax } from './job-work.ts';

const figure = (typed: string): string => typed.replace(',', '.');

/** What the desk changes before issue; why is kept with it. */
@Injectable()
export class DraftChangesService {
  constructor(
    private readonly drafts: DraftsService,
    private readonly bills: JobBillRepository,
    private readonly changes: DraftChanges,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** Changes, adds or takes out one line. */
  async edit(jobId: string, input: EditLineDto): Promise<void> {
    if (input.discount !== '' && input.discountFor === '') throw badFigure('discountFor', 'Say what the discount is for.');
    await this.change(jobId, async (tx, { lines, workshop }) => {
      const before = lines.find(({ origin }) => origin === input.origin);
      if (input.origin !== '' && !before) throw badFigure('origin', 'This line is no longer in the draft. Look at it again.');
      const tax = workshopTax(workshop);
      await this.changes.saveEdit(tx, jobId, {
        origin: before?.origin ?? newTypedOrigin(randomUUID()),
        kind: before?.kind ?? 'other',
        description: input.description,
        quantity: figure(input.quantity),
        unit: before?.unit ?? input.unit,
        unitPrice: figure(input.unitPrice),
        vatCategory: input.vatCategory ?? before?.vatCategory ?? tax.vatCategory,
        vatRatePct: input.vatRate === undefined ? (before?.vatRate ?? tax.vatRate ?? '0') : figure(input.vatRate),
        discount: input.discount === '' ? null : figure(input.discount),
        discountFor: input.discount === '' ? '' : input.discountFor,
        changedWhy: input.why,
        isRemoved: input.remove === 'on',
        at: this.clock.now(),
      });
      return { origin: input.origin, why: input.why };
    });
  }

  /** Takes something off the whole draft, or puts it on. */
  async adjust(jobId: string, { kind, amount, reason, vatRate }: AdjustmentDto): Promise<void> {
    await this.change(jobId, async (tx, { totals }) => {
      const rate = figure(vatRate);
      const row = totals.vat.find((candidate) => Number(candidate.rate ?? '0') === Number(rate));
      if (!row) throw badFigure('vatRate', 'No line has this rate: choose one that the draft’s lines have.');
      await this.changes.addAdjustment(tx, jobId, {
        kind,
        amount: figure(amount),
        reason,
        vatCategory: row.category,
        vatRatePct: row.rate ?? '0',
        at: this.clock.now(),
      });
      return { kind, amount, reason };
    });
  }

  async takeAdjustmentBack(jobId: string, id: string): Promise<void> {
    await this.change(jobId, async (tx) => {
      if (!(await this.changes.takeAdjustmentBack(tx, jobId, { id, at: this.clock.now() }))) throw takenBackAlready();
      return { adjustment: id, isTakenBack: true };
    });
  }

  /** Advice and the customer's own references. */
  async words(jobId: string, paper: PaperDto): Promise<void> {
    await this.change(jobId, async (tx) => {
      const { advice, orderReference, buyerReference } = paper;
      await this.changes.savePaper(tx, jobId, { advice, orderReference, buyerReference });
      return { orderReference, buyerReference };
    });
  }

  private async change(jobId: string, work: (tx: Tx, draft: Draft) => Promise<Readonly<Record<string, string | boolean>>>): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.bills.lockJob(tx, jobId))) throw noJob();
      const draft = await this.drafts.draft(jobId, tx);
      if (draft.facts.standing) throw issuedAlready(draft.facts.standing.number);
      const after = await work(tx, draft);
      // The changed draft must still compute, or the change is not kept.
      await this.drafts.draft(jobId, tx);
      await this.audit.record(tx, { action: 'changed', subject: 'draft', subjectId: jobId, after });
      return null;
    });
  }
}
