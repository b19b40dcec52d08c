import { type IsoDate, type Prepayment } from '../document/invoice-document.ts';
import { type VatRow } from '../totals/totals-input.ts';

/** How a country treats money taken before the work: its own numbered tax document (art. 65), or plain prepaid money. */
export type DepositForm = 'tax-document' | 'prepaid';

/** A deposit for which a tax document was issued. */
export interface IssuedDeposit {
  readonly number: string;
  readonly issueDate: IsoDate;
  /** Its VAT table, less what credit notes took back and earlier invoices deducted. */
  readonly vat: readonly VatRow[];
}

/** Money received; `depositNumber` when the deposit's own document already counts it. */
export interface ReceivedMoney extends Prepayment {
  readonly depositNumber?: string;
}
