import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Decimal, sumAmounts } from '#libs/money';
import { Audit } from '../../../platform/audit.ts';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import { dayColumn } from '../../../web/dates.ts';
import { JobAccount } from '../../job-cards/job-account.service.ts';
import type { PayBackDto } from '../dto/pay-back.dto.ts';
import type { PaymentDto } from '../dto/payment.dto.ts';
import { badFigure, noInvoice, notOnCreditNote, tooMuchBack, tooMuchPaid } from '../invoices.errors.ts';
import { type InvoiceRow, InvoicesRepository } from '../invoices.repository.ts';
import { type NewPayment, PaymentsRepository } from './payments.repository.ts';

/** The invoice less its credit notes. */
function dueOn({ payable, corrections }: InvoiceRow): Decimal {
  return new Decimal(payable).minus(sumAmounts(corrections.map(({ payable: amount }) => amount)));
}

const paidOn = ({ payments }: InvoiceRow): Decimal => sumAmounts(payments.map(({ amount }) => amount));

/** What is still to pay: the invoice less its credit notes and payments. Below zero: we owe the customer. */
export function openOn(invoice: InvoiceRow): string {
  return dueOn(invoice).minus(paidOn(invoice)).toFixed(2);
}

/** What can go back at most: all that was paid, or what credit notes say that we owe beyond it. */
export function mostBack(invoice: InvoiceRow): string {
  return paidOn(invoice)
    .minus(Decimal.min(dueOn(invoice), 0))
    .toFixed(2);
}

/** What a form says of money: its sum above zero, its day one of the calendar. */
export function typedMoney(input: PaymentDto): Pick<NewPayment, 'amount' | 'method' | 'reference' | 'paidOn'> {
  const amount = input.amount.replace(',', '.');
  if (new Decimal(amount).isZero()) throw badFigure('amount', 'Give an amount above zero.');
  const day = dayColumn(input.paidOn);
  if (!day) throw badFigure('paidOn', 'This day does not exist. Check the date.');
  return { amount, method: input.method, reference: input.reference, paidOn: day };
}

@Injectable()
export class PaymentsService {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly payments: PaymentsRepository,
    private readonly account: JobAccount,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async take(invoiceId: string, input: PaymentDto): Promise<void> {
    const money = typedMoney(input);
    await this.unitOfWork.run(async (tx) => {
      const invoice = await this.locked(tx, invoiceId);
      const open = openOn(invoice);
      if (new Decimal(money.amount).gt(open)) throw tooMuchPaid(`${Decimal.max(open, 0).toFixed(2)} ${invoice.currency}`);
      await this.book(tx, invoice, { ...money, why: '' });
      return null;
    });
  }

  /** Money goes back to the customer, or a payment that was booked by mistake is countered: nothing is deleted. */
  async giveBack(invoiceId: string, input: PayBackDto): Promise<void> {
    const { amount, ...money } = typedMoney(input);
    await this.unitOfWork.run(async (tx) => {
      const invoice = await this.locked(tx, invoiceId);
      const most = mostBack(invoice);
      if (new Decimal(amount).gt(most)) throw tooMuchBack(`${most} ${invoice.currency}`);
      await this.book(tx, invoice, { ...money, amount: `-${amount}`, why: input.why });
      return null;
    });
  }

  private async locked(tx: Tx, invoiceId: string): Promise<InvoiceRow> {
    await this.invoices.lockJobOf(tx, invoiceId);
    await this.invoices.lock(tx, invoiceId);
    const invoice = await this.invoices.find(invoiceId, tx);
    if (!invoice) throw noInvoice();
    if (invoice.kind === 'credit-note') throw notOnCreditNote();
    return invoice;
  }

  private async book(
    tx: Tx,
    { id: invoiceId, jobId }: InvoiceRow,
    money: Pick<NewPayment, 'amount' | 'method' | 'reference' | 'paidOn' | 'why'>,
  ): Promise<void> {
    await this.payments.add(tx, { invoiceId, ...money, takenById: currentStaff().staffId, takenAt: this.clock.now() });
    const { amount, method, why } = money;
    const action = amount.startsWith('-') ? 'paid back' : 'paid';
    await this.audit.record(tx, { action, subject: 'invoice', subjectId: invoiceId, after: { amount, method, why } });
    if (jobId !== null) await this.account.square(tx, jobId);
  }
}
