import { Injectable } from '@nestjs/common';
import { creditNote, type CreditRequest, type IssuedDocument } from '#libs/invoicing';
import { sumAmounts } from '#libs/money';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import { JobAccount } from '../../job-cards/job-account.service.ts';
import type { CreditDto } from '../dto/credit.dto.ts';
import { badCredit, depositTaken, noInvoice, notOnceMore, nothingToCredit } from '../invoices.errors.ts';
import { type InvoiceRow, InvoicesRepository } from '../invoices.repository.ts';
import { NumberedDocuments } from '../numbered-documents.service.ts';
import { type ChosenItem, creditItems } from './credit-items.ts';

/** An issued document has its number and date. */
function asIssued({ document }: InvoiceRow): IssuedDocument {
  const { number, issueDate } = document;
  if (number === null || issueDate === null) throw new Error('An issued invoice has a number and a date');
  return { ...document, number, issueDate };
}

const BACK_TO_FIELD = /^items\[(\d+)\]/;

/** Takes an issued document back, whole or in part, by a document of its own that refers to it. */
@Injectable()
export class CreditService {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly documents: NumberedDocuments,
    private readonly account: JobAccount,
    private readonly unitOfWork: UnitOfWork,
  ) {}

  /** @returns the credit note's id. */
  async credit(invoiceId: string, input: CreditDto): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      await this.invoices.lockJobOf(tx, invoiceId);
      await this.invoices.lock(tx, invoiceId);
      const invoice = await this.invoices.find(invoiceId, tx);
      if (!invoice) throw noInvoice();
      if (invoice.kind === 'credit-note') throw notOnceMore();
      const earlier = await this.invoices.creditNotesOf(invoiceId, tx);
      const taker = invoice.kind === 'deposit' ? await this.invoices.takerOfDeposit(tx, invoice) : undefined;
      if (taker !== undefined) throw depositTaken(taker);
      const original = asIssued(invoice);
      const chosen = input.what === 'parts' ? creditItems(input, original.lines) : [];
      const what: CreditRequest['what'] =
        input.what === 'rest' ? { kind: 'rest' } : { kind: 'parts', items: chosen.map(({ item }) => item) };
      if (isEmpty(invoice)) throw nothingToCredit(invoice.number);
      const note = creditNote({ original, earlier, what, reason: input.reason });
      if (!note.ok) throw badCredit(note.errors.map(({ field, message }) => ({ field: fieldOf(field, chosen), message })));
      const { jobId, customerId } = invoice;
      const id = await this.documents.numberCredit(tx, note.value.document, {
        kind: 'credit-note',
        jobId,
        customerId,
        originalId: invoiceId,
      });
      if (jobId !== null) await this.account.square(tx, jobId);
      return id;
    });
  }
}

const isEmpty = ({ taxInclusive, corrections }: InvoiceRow): boolean =>
  corrections.length > 0 && sumAmounts(corrections.map((note) => note.taxInclusive)).equals(taxInclusive);

/** The library names the item; the form has it in a row. */
function fieldOf(field: string, chosen: readonly ChosenItem[]): string {
  const item = chosen[Number(BACK_TO_FIELD.exec(field)?.[1] ?? -1)];
  return item === undefined ? 'what' : `${item.field}.${item.row}`;
}
