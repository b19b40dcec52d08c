import { STAGE_WORDS, type Stage } from '#libs/checklist';
import { Decimal } from '#libs/money';
import { isPast, plainDate } from '../../web/dates.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { InvoiceListRow, ReadyJob } from './invoices.repository.ts';

const KIND_WORDS: Readonly<Record<string, string>> = { 'credit-note': 'Credit note', deposit: 'Deposit', simplified: 'Simplified' };

export interface TillView {
  overdue: string;
  cashUp: string;
  journal: string;
  title: string;
  head: { title: string; lead: string; rest: string };
  ready: { href: string; number: number; car: string; who: string; stage: string }[];
  invoices: {
    href: string;
    number: string;
    what: string;
    who: string;
    issued: string;
    due: string;
    payable: string;
    open: string;
    isLate: boolean;
    isPaid: boolean;
  }[];
  hasReady: boolean;
  hasInvoices: boolean;
}

export function presentTill(
  { ready, invoices }: { ready: readonly ReadyJob[]; invoices: readonly InvoiceListRow[] },
  { now, timeZone }: { now: Date; timeZone: string },
): TillView {
  const rows = invoices.map((invoice) => {
    const open = new Decimal(invoice.payable).minus(invoice.settled);
    const isCredit = invoice.kind === 'credit-note';
    return {
      href: urls.invoice(invoice.id),
      number: invoice.number,
      what: KIND_WORDS[invoice.kind] ?? 'Invoice',
      who: invoice.customerName,
      issued: plainDate(invoice.issuedOn),
      due: plainDate(invoice.dueOn),
      payable: moneyText(invoice.payable, invoice.currency),
      open: isCredit ? '' : open.isZero() ? 'paid' : amountText(open.toFixed(2)),
      isPaid: isCredit || open.isZero(),
      isLate: !isCredit && open.gt(0) && isPast(invoice.dueOn, now, timeZone),
    };
  });
  const unpaid = rows.filter(({ isPaid }) => !isPaid).length;
  const toWrite =
    ready.length === 0
      ? 'No finished job waits for its invoice.'
      : ready.length === 1
        ? 'One finished job waits for its invoice.'
        : `${ready.length} finished jobs wait for their invoices.`;
  return {
    overdue: urls.overdue,
    cashUp: urls.cashUp,
    journal: urls.journal,
    title: 'Till',
    head: {
      title: 'Till',
      lead: toWrite,
      rest: unpaid === 0 ? '' : `Of the invoices below ${unpaid === 1 ? 'one is' : `${unpaid} are`} not fully paid.`,
    },
    ready: ready.map((job) => ({
      href: urls.draft(job.id),
      number: job.number,
      car: `${job.vehicle.make} ${job.vehicle.model}, ${job.vehicle.registration}`,
      who: job.customer.name,
      stage: STAGE_WORDS[job.stage as Stage] ?? job.stage,
    })),
    invoices: rows,
    hasReady: ready.length > 0,
    hasInvoices: rows.length > 0,
  };
}
