import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { depositLines, type InvoiceDraft, type VatRow } from '#libs/invoicing';
import { Decimal, percentOf, sumAmounts, toAmount } from '#libs/money';
import { Audit } from '../../../platform/audit.ts';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import { isoDay } from '../../../web/dates.ts';
import { JobAccount } from '../../job-cards/job-account.service.ts';
import type { Draft } from '../draft-of.ts';
import { DraftsService } from '../drafts.service.ts';
import type { PayBackDto } from '../dto/pay-back.dto.ts';
import type { PaymentDto } from '../dto/payment.dto.ts';
import { carOnDocument, paperOf } from '../invoice-draft.ts';
import { badDraft, noJob, payOnInvoice, tooMuchBack } from '../invoices.errors.ts';
import { JobBillRepository } from '../job-bill.repository.ts';
import { workshopTax } from '../job-work.ts';
import { type NewPayment, PaymentsRepository } from '../money/payments.repository.ts';
import { METHOD_OPTIONS } from '../money/method-words.ts';
import { typedMoney } from '../money/payments.service.ts';
import { NumberedDocuments } from '../numbered-documents.service.ts';
import { METHODS } from './deduction.ts';

type Money = Pick<NewPayment, 'amount' | 'method' | 'reference' | 'paidOn'>;

/** Before any line is there the deposit goes by the workshop's own tax: the shares are all that counts. */
function estimateOf({ totals, workshop }: Draft): readonly VatRow[] {
  if (totals.vat.length > 0) return totals.vat;
  const { vatCategory: category, vatRate: rate } = workshopTax(workshop);
  return [{ category, rate, taxable: '100.00', tax: toAmount(percentOf('100.00', rate ?? '0')) }];
}

/** Money before the work: with a tax document of its own, or noted as prepaid, as the country wants it. */
@Injectable()
export class DepositsService {
  constructor(
    private readonly drafts: DraftsService,
    private readonly bills: JobBillRepository,
    private readonly payments: PaymentsRepository,
    private readonly documents: NumberedDocuments,
    private readonly account: JobAccount,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** @returns the deposit's invoice; null where the money is only noted. */
  async take(jobId: string, input: PaymentDto): Promise<string | null> {
    const money = typedMoney(input);
    return this.unitOfWork.run(async (tx) => {
      const draft = await this.locked(tx, jobId);
      if (draft.facts.standing) throw payOnInvoice(draft.facts.standing.number);
      if (draft.workshop.depositForm === 'prepaid') {
        await this.book(tx, { jobId, ...money, why: '' });
        return null;
      }
      const invoiceId = await this.documents.number(tx, this.depositDraft(draft, money), {
        kind: 'deposit',
        jobId,
        customerId: draft.facts.customer.id,
      });
      await this.book(tx, { invoiceId, ...money, why: '' });
      await this.account.square(tx, jobId);
      return invoiceId;
    });
  }

  /** Money on account that no invoice has taken goes back. What has a tax document is credited there first. */
  async giveBack(jobId: string, input: PayBackDto): Promise<void> {
    const money = typedMoney(input);
    await this.unitOfWork.run(async (tx) => {
      const { facts, workshop } = await this.locked(tx, jobId);
      const held = sumAmounts(facts.onAccount.map(({ amount }) => amount));
      if (new Decimal(money.amount).gt(held)) throw tooMuchBack(`${held.toFixed(2)} ${workshop.currency}`);
      await this.book(tx, { jobId, ...money, amount: `-${money.amount}`, why: input.why });
      return null;
    });
  }

  private async locked(tx: Tx, jobId: string): Promise<Draft> {
    if (!(await this.bills.lockJob(tx, jobId))) throw noJob();
    return this.drafts.draft(jobId, tx);
  }

  private depositDraft(draft: Draft, { amount, method, paidOn }: Money): InvoiceDraft {
    const { facts, workshop } = draft;
    const lines = depositLines(amount, estimateOf(draft), { words: `Deposit on job ${facts.job.number}` });
    if (!lines.ok) throw badDraft(lines.errors);
    const today = isoDay(this.clock.now(), workshop.timeZone);
    return {
      kind: 'deposit-invoice',
      form: 'full',
      number: null,
      issueDate: null,
      ...paperOf(workshop, facts),
      supplyDate: isoDay(paidOn, 'utc'),
      dueDate: today,
      paymentTerms: 'Paid on account',
      paymentMeans: [{ method: METHODS[method] === 'credit-transfer' ? 'other' : (METHODS[method] ?? 'other'), words: wordsOf(method) }],
      preceding: [],
      lines: lines.value.lines,
      allowances: [],
      charges: [],
      prepayments: [],
      rounding: Number(lines.value.rounding) === 0 ? undefined : lines.value.rounding,
      job: { ...carOnDocument(facts), workDone: [], found: [], advice: [], nextDue: [] },
    };
  }

  private async book(tx: Tx, payment: Omit<NewPayment, 'takenById' | 'takenAt'>): Promise<void> {
    await this.payments.add(tx, { ...payment, takenById: currentStaff().staffId, takenAt: this.clock.now() });
    const { jobId, invoiceId, amount, method, why } = payment;
    await this.audit.record(tx, {
      action: amount.startsWith('-') ? 'paid back' : 'paid',
      subject: invoiceId === undefined ? 'job' : 'deposit',
      subjectId: invoiceId ?? jobId ?? '',
      after: { amount, method, why },
    });
  }
}

const wordsOf = (method: string): string => METHOD_OPTIONS.find(({ value }) => value === method)?.label ?? method;
