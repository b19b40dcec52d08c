import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { composeDocument, type InvoiceDocument, type InvoiceDraft, missingContents } from '#libs/invoicing';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import { rulesOf } from './invoice-draft.ts';
import { badDraft, contentsMissing } from './invoices.errors.ts';
import { InvoicesRepository } from './invoices.repository.ts';

export interface Numbered {
  kind: 'invoice' | 'simplified' | 'deposit' | 'credit-note';
  jobId: string | null;
  customerId: string;
  originalId?: string;
}

/** A series a year for each kind; numbers that stand beside each other are told apart by their first letters. */
const SERIES: Readonly<Record<Numbered['kind'], string>> = { invoice: '', simplified: '', deposit: 'D-', 'credit-note': 'C-' };

/** Number, date, sums and the whole print data of a document, in the issuing transaction; afterwards nothing of it changes. */
@Injectable()
export class NumberedDocuments {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly workshop: WorkshopFacts,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** @returns the document's id. */
  async number(tx: Tx, draft: InvoiceDraft, facts: Numbered): Promise<string> {
    return this.give(tx, facts, (given) => compose({ ...draft, remittance: given.number, ...given }));
  }

  /** The same for a credit note, whose sums close its original and are not computed anew. */
  async numberCredit(tx: Tx, document: InvoiceDocument, facts: Numbered): Promise<string> {
    return this.give(tx, facts, (given) => ({ ...document, ...given }));
  }

  private async give(
    tx: Tx,
    { kind, originalId, ...facts }: Numbered,
    write: (given: { number: string; issueDate: string }) => InvoiceDocument,
  ): Promise<string> {
    const workshop = await this.workshop.get(tx);
    const issueDate = isoDay(this.clock.now(), workshop.timeZone);
    const missing = missingContents(write({ number: '1', issueDate }), { rules: rulesOf(workshop), stage: 'before-issue' });
    if (missing.length > 0) throw contentsMissing(missing);
    const seriesKey = `${SERIES[kind]}${issueDate.slice(0, 4)}`;
    const { serial, number } = await this.invoices.nextNumber(tx, seriesKey, `${seriesKey}-`);
    const document = write({ number, issueDate });
    const { taxExclusive, vatTotal, taxInclusive, payable } = document.totals;
    const id = await this.invoices.issue(tx, {
      ...facts,
      ...(originalId === undefined ? {} : { originalId }),
      seriesKey,
      serial,
      number,
      kind,
      issuedOn: new Date(`${issueDate}T00:00:00Z`),
      dueOn: new Date(`${document.dueDate ?? issueDate}T00:00:00Z`),
      currency: document.currency,
      taxExclusive,
      vatTotal,
      taxInclusive,
      payable,
      document,
      issuedAt: this.clock.now(),
      issuedById: currentStaff().staffId,
    });
    await this.audit.record(tx, { action: 'issued', subject: kind, subjectId: id, after: { number, payable } });
    return id;
  }
}

function compose(draft: InvoiceDraft): InvoiceDocument {
  const document = composeDocument(draft);
  if (!document.ok) throw badDraft(document.errors);
  return document.value;
}
