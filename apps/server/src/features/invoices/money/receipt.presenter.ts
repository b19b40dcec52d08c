import type { Workshop } from '../../../platform/workshop-facts.ts';
import { plainDate } from '../../../web/dates.ts';
import { moneyText } from '../../../web/money-text.ts';
import { METHOD_WORDS } from './method-words.ts';
import type { PaymentRow } from './payments.repository.ts';

export interface ReceiptView {
  title: string;
  lang: string;
  isDemo: boolean;
  kindWord: string;
  seller: { name: string; lines: string[] };
  number: string;
  amount: string;
  rows: { term: string; value: string }[];
}

/** @example presentReceipt(payment, workshop).amount // 'EUR 252.53' */
export function presentReceipt(payment: PaymentRow, workshop: Workshop): ReceiptView {
  const { invoice, job, amount, method, reference, why } = payment;
  const isBack = amount.startsWith('-');
  const forWhat = invoice ? `Invoice ${invoice.number}` : `On account of job ${job?.number ?? ''}`;
  const { addressLines, postcode, city, phone, email, vatId } = workshop;
  return {
    title: `${isBack ? 'Paid back' : 'Receipt'}, ${forWhat}`,
    lang: 'en-GB',
    isDemo: workshop.isDemo,
    kindWord: isBack ? 'Paid back' : 'Receipt',
    seller: {
      name: workshop.name,
      lines: [
        [...addressLines, [postcode, city].filter((part) => part !== '').join(' ')].filter((line) => line !== '').join(', '),
        [email, phone].filter((part) => part !== '').join(', '),
        vatId === '' ? '' : `VAT number ${vatId}`,
      ].filter((line) => line !== ''),
    },
    // The payment's own id, shortened to what is read out over a counter.
    number: payment.id.slice(-8).toUpperCase(),
    amount: moneyText(amount.replace('-', ''), invoice?.currency ?? workshop.currency),
    rows: [
      { term: isBack ? 'To' : 'From', value: payment.customerName },
      { term: 'For', value: forWhat },
      { term: 'Day', value: plainDate(payment.paidOn) },
      { term: 'How', value: METHOD_WORDS[method] ?? method },
      { term: 'Reference', value: reference },
      { term: 'Why', value: why },
      { term: isBack ? 'Given by' : 'Taken by', value: payment.takenBy },
    ].filter(({ value }) => value !== ''),
  };
}
