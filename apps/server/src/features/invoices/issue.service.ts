import { Injectable } from '@nestjs/common';
import { composeDocument, type DocumentForm, type InvoiceDraft, missingContents } from '#libs/invoicing';
import { Decimal } from '#libs/money';
import { Clock } from '../../platform/clock.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { isoDay } from '../../web/dates.ts';
import { JobAccount } from '../job-cards/job-account.service.ts';
import type { Draft } from './draft-of.ts';
import { DraftsService } from './drafts.service.ts';
import { invoiceDraft, rulesOf } from './invoice-draft.ts';
import { aboveCeiling, belowZero, depositBeyondWork, issuedAlready, noCharge, nothingToBill, notReady } from './invoices.errors.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { JobBillRepository } from './job-bill.repository.ts';
import { NumberedDocuments } from './numbered-documents.service.ts';

/** The engine has run hot, or the car left without a repair: there is something to bill. */
const READY_STAGES = new Set(['run-hot', 'settling', 'settled', 'keys-out', 'squared']);

/** Issues: number, date, sums and the whole print data in one transaction; afterwards nothing of it changes. */
@Injectable()
export class IssueService {
  constructor(
    private readonly drafts: DraftsService,
    private readonly bills: JobBillRepository,
    private readonly invoices: InvoicesRepository,
    private readonly account: JobAccount,
    private readonly documents: NumberedDocuments,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** What stands in the way of issuing, in words; empty when nothing does. */
  obstacles(draft: Draft, form: DocumentForm = 'full'): string[] {
    try {
      this.refuseUnready(draft);
    } catch (error) {
      if (error instanceof DomainError) return [error.message];
      throw error;
    }
    const document = composeDocument(this.draftOf(draft, form));
    if (!document.ok) return document.errors.map(({ message }) => message);
    return missingContents(document.value, { rules: rulesOf(draft.workshop), stage: 'before-issue' }).map(
      ({ what, where }) => `${what}. Enter it at: ${where}.`,
    );
  }

  /** @returns the invoice's id. */
  async issue(jobId: string, form: DocumentForm = 'full'): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      await this.bills.lockJob(tx, jobId);
      const draft = await this.drafts.draft(jobId, tx);
      const { facts } = draft;
      if (facts.standing) throw issuedAlready(facts.standing.number);
      this.refuseUnready(draft);
      const unnumbered = this.draftOf(draft, form);
      const id = await this.documents.number(tx, unnumbered, {
        kind: form === 'simplified' ? 'simplified' : 'invoice',
        jobId,
        customerId: facts.customer.id,
      });
      await this.invoices.takePrepaid(
        tx,
        id,
        facts.onAccount.map((money) => money.id),
      );
      await this.account.square(tx, jobId);
      return id;
    });
  }

  /** Only work that was said yes to, that is done, and that stays below the ceiling is billed. */
  private refuseUnready({ facts, lines, totals, deduction, due }: Draft): void {
    if (!READY_STAGES.has(facts.job.stage)) throw notReady();
    if (facts.job.noChargeWhy !== null) throw noCharge(facts.job.noChargeWhy);
    if (facts.ceilingGross === null || lines.length === 0) throw nothingToBill();
    const least = Decimal.min(totals.taxInclusive, due.taxInclusive, due.payable);
    if (least.lt(0)) throw belowZero(least.toFixed(2));
    if (new Decimal(totals.taxInclusive).gt(facts.ceilingGross)) throw aboveCeiling(facts.ceilingGross, totals.taxInclusive);
    const [beyond] = deduction.warnings;
    if (beyond !== undefined) throw depositBeyondWork(beyond);
  }

  private draftOf(draft: Draft, form: DocumentForm): InvoiceDraft {
    return invoiceDraft(draft, isoDay(this.clock.now(), draft.workshop.timeZone), form);
  }
}
