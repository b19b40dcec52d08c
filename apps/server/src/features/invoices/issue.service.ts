import { Injectable } from '@nestjs/common';
import { composeDocument, type InvoiceDocument, type InvoiceDraft, missingContents } from '#libs/invoicing';
import { Decimal } from '#libs/money';
import { DateTime } from 'luxon';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { Workshop } from '../../platform/workshop-facts.ts';
import { JobAccount } from '../job-cards/job-account.service.ts';
import { type Draft, DraftsService } from './drafts.service.ts';
import { invoiceDraft } from './invoice-draft.ts';
import { aboveCeiling, badDraft, belowZero, contentsMissing, issuedAlready, noCharge, nothingToBill, notReady } from './invoices.errors.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { JobBillRepository } from './job-bill.repository.ts';

// Set by the country once the owner's settings exist; until then every invoice is a full one.
const RULES = { simplifiedLimit: null, accountingCurrency: null, cashAccounting: false };

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
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** What stands in the way of issuing, in words; empty when nothing does. */
  obstacles(draft: Draft): string[] {
    try {
      this.refuseUnready(draft);
    } catch (error) {
      if (error instanceof DomainError) return [error.message];
      throw error;
    }
    const document = composeDocument(this.draftOf(draft));
    if (!document.ok) return document.errors.map(({ message }) => message);
    return missingContents(document.value, { rules: RULES, stage: 'before-issue' }).map(
      ({ what, where }) => `${what} Enter it at: ${where}.`,
    );
  }

  /** @returns the invoice's id. */
  async issue(jobId: string): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      await this.bills.lockJob(tx, jobId);
      const draft = await this.drafts.draft(jobId, tx);
      const [earlier] = draft.facts.invoices.filter(({ kind }) => kind === 'invoice');
      if (earlier) throw issuedAlready(earlier.number);
      this.refuseUnready(draft);
      const unnumbered = this.draftOf(draft);
      const checked = this.compose(unnumbered);
      const missing = missingContents(checked, { rules: RULES, stage: 'before-issue' });
      if (missing.length > 0) throw contentsMissing(missing);
      const { issuedOn, year } = this.today(draft.workshop);
      const { serial, number } = await this.invoices.nextNumber(tx, year, `${year}-`);
      const document = this.compose({ ...unnumbered, number, issueDate: issuedOn, remittance: number });
      const { taxExclusive, vatTotal, taxInclusive, payable } = document.totals;
      const id = await this.invoices.issue(tx, {
        seriesKey: year,
        serial,
        number,
        kind: 'invoice',
        jobId,
        customerId: draft.facts.customer.id,
        issuedOn: new Date(`${issuedOn}T00:00:00Z`),
        dueOn: new Date(`${document.dueDate ?? issuedOn}T00:00:00Z`),
        currency: document.currency,
        taxExclusive,
        vatTotal,
        taxInclusive,
        payable,
        document,
        issuedAt: this.clock.now(),
        issuedById: currentStaff().staffId,
      });
      await this.audit.record(tx, { action: 'issued', subject: 'invoice', subjectId: id, after: { number, payable } });
      await this.account.square(tx, jobId);
      return id;
    });
  }

  /** Only work that was said yes to, that is done, and that stays below the ceiling is billed. */
  private refuseUnready({ facts, lines, totals }: Draft): void {
    if (!READY_STAGES.has(facts.job.stage)) throw notReady();
    if (facts.job.noChargeWhy !== null) throw noCharge(facts.job.noChargeWhy);
    if (facts.ceilingGross === null || lines.length === 0) throw nothingToBill();
    if (new Decimal(totals.taxInclusive).lt(0)) throw belowZero(totals.taxInclusive);
    if (new Decimal(totals.taxInclusive).gt(facts.ceilingGross)) throw aboveCeiling(facts.ceilingGross, totals.taxInclusive);
  }

  private draftOf(draft: Draft): InvoiceDraft {
    return invoiceDraft(draft, this.today(draft.workshop).issuedOn);
  }

  private compose(draft: InvoiceDraft): InvoiceDocument {
    const document = composeDocument(draft);
    if (!document.ok) throw badDraft(document.errors);
    return document.value;
  }

  private today({ timeZone }: Workshop): { issuedOn: string; year: string } {
    const today = DateTime.fromJSDate(this.clock.now(), { zone: timeZone });
    return { issuedOn: today.toFormat('yyyy-MM-dd'), year: today.toFormat('yyyy') };
  }
}
