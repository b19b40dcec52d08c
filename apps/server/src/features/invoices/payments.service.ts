import { Injectable } from '@nestjs/common';
import { Decimal, sumAmounts } from '#libs/money';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { dayColumn } from '../../web/dates.ts';
import { JobAccount } from '../job-cards/job-account.service.ts';
import type { PaymentDto } from './dto/payment.dto.ts';
import { badFigure, noInvoice, notOnCreditNote, tooMuchPaid } from './invoices.errors.ts';
import { type InvoiceRow, InvoicesRepository } from './invoices.repository.ts';

/** What is still to pay: the invoice less its credit notes and payments. */
export function openOn({ payable, payments, corrections }: InvoiceRow): string {
  const credited = corrections.map(({ payable: amount }) => amount);
  const paid = payments.map(({ amount }) => amount);
  return new Decimal(payable).minus(sumAmounts([...credited, ...paid, '0'])).toFixed(2);
}

@Injectable()
export class PaymentsService {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly account: JobAccount,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async take(invoiceId: string, input: PaymentDto): Promise<void> {
    const amount = input.amount.replace(',', '.');
    if (new Decimal(amount).isZero()) throw badFigure('amount', 'Give an amount above zero.');
    const paidOn = dayColumn(input.paidOn);
    if (!paidOn) throw badFigure('paidOn', 'This day does not exist. Check the date.');
    await this.unitOfWork.run(async (tx) => {
      await this.invoices.lockJobOf(tx, invoiceId);
      await this.invoices.lock(tx, invoiceId);
      const invoice = await this.invoices.find(invoiceId, tx);
      if (!invoice) throw noInvoice();
      if (invoice.kind === 'credit-note') throw notOnCreditNote();
      const open = openOn(invoice);
      if (new Decimal(amount).gt(open)) throw tooMuchPaid(`${open} ${invoice.currency}`);
      const { method, reference } = input;
      await this.invoices.addPayment(tx, {
        invoiceId,
        amount,
        method,
        reference,
        paidOn,
        takenById: currentStaff().staffId,
        takenAt: this.clock.now(),
      });
      await this.audit.record(tx, { action: 'paid', subject: 'invoice', subjectId: invoiceId, after: { amount, method } });
      if (invoice.jobId !== null) await this.account.square(tx, invoice.jobId);
      return null;
    });
  }
}
