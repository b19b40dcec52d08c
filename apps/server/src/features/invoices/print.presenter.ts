import { type InvoiceDocument, units } from '#libs/invoicing';
import type { DecimalString } from '#libs/money';
import { dateText } from '../../web/dates.ts';
import { amountText } from '../../web/money-text.ts';

export interface PrintView {
  title: string;
  lang: string;
  isDemo: boolean;
  kindWord: string;
  number: string;
  seller: { name: string; lines: string[] };
  buyer: string[];
  vehicle: string[];
  supplied: string;
  issued: string;
  due: string;
  remittance: string;
  currency: string;
  lines: { what: string; quantity: string; price: string; vat: string; net: string }[];
  net: string;
  vat: { words: string; tax: string }[];
  payable: string;
  payment: string[];
  work: string[];
  hasWork: boolean;
  proofOwed: string | undefined;
  guarantee: string | undefined;
  account: string | undefined;
}

const KIND_WORDS = { invoice: 'Invoice', 'deposit-invoice': 'Deposit invoice', 'credit-note': 'Credit note' } as const;

const day = (iso: string | undefined | null): string => (iso ? dateText(new Date(`${iso}T00:00:00Z`), 'utc') : '');
const unitShort = (code: string): string => units.find((unit) => unit.code === code)?.short ?? code;
const given = (lines: readonly (string | undefined)[]): string[] =>
  lines.filter((line): line is string => line !== undefined && line.trim() !== '');
const isGiven = (text: string | undefined): boolean => text !== undefined && text !== '';

function placeOf({ lines, postcode, city }: { lines: readonly string[]; postcode?: string; city?: string }): string[] {
  return given([...lines, [postcode, city].filter(isGiven).join(' ')]);
}

/** @example withoutZeros('4.100') // '4.1' */
export const withoutZeros = (figure: DecimalString): string => (figure.includes('.') ? figure.replace(/\.?0+$/, '') : figure);

/** Two decimals, or as many more as a unit price has. */
function price(value: DecimalString): string {
  const decimals = value.split('.')[1]?.length ?? 0;
  return decimals > 2 ? value : amountText(value);
}

/** What a credit note corrects and why: the law wants both on it. */
function correctsWords({ kind, preceding, correctionReason = '' }: InvoiceDocument): string | undefined {
  if (kind !== 'credit-note') return undefined;
  const originals = preceding.map(({ number, issueDate }) => `${number}${issueDate === undefined ? '' : ` of ${day(issueDate)}`}`);
  return `It corrects ${originals.join(', ')}: ${correctionReason}.`;
}

/** What the page shows, from the frozen document alone: asked for in ten years it is the same. */
export function presentPrint(document: InvoiceDocument, isDemo: boolean): PrintView {
  const { seller, buyer, job, totals } = document;
  const number = document.number ?? '';
  const vehicle = job?.vehicle;
  return {
    title: `${KIND_WORDS[document.kind]} ${number}`,
    lang: document.language,
    isDemo,
    kindWord: KIND_WORDS[document.kind],
    number,
    seller: {
      name: seller.name,
      lines: given([
        placeOf(seller.address).join(', '),
        given([seller.contact?.email, seller.contact?.phone]).join(', '),
        seller.vatId === undefined ? undefined : `VAT number ${seller.vatId}`,
      ]),
    },
    buyer: buyer ? given([buyer.name, ...placeOf(buyer.address), buyer.vatId === undefined ? undefined : `VAT number ${buyer.vatId}`]) : [],
    vehicle: given([
      given([vehicle?.makeAndModel, vehicle?.registration]).join(', '),
      vehicle?.vin === undefined ? undefined : `VIN ${vehicle.vin}`,
      vehicle?.odometer === undefined
        ? undefined
        : `${Number(vehicle.odometer.value).toLocaleString('en-GB').replaceAll(',', '\u202f')} ${vehicle.odometer.unit}`,
    ]),
    supplied: day(document.supplyDate),
    issued: day(document.issueDate),
    due: day(document.dueDate),
    remittance: document.remittance ?? number,
    currency: document.currency,
    lines: document.lines.map((line) => ({
      what: given([line.name, line.itemNumber, line.description]).join(', '),
      quantity: given([withoutZeros(line.quantity), unitShort(line.unit)]).join(' '),
      price: price(line.unitPrice),
      vat: line.vatRate === null ? '–' : `${line.vatRate} %`,
      net: price(line.net),
    })),
    net: price(totals.taxExclusive),
    vat: totals.vat.map(({ rate, taxable, tax }) => ({
      words: rate === null ? 'No VAT' : `VAT ${rate} % of ${price(taxable)}`,
      tax: price(tax),
    })),
    payable: price(totals.payable),
    payment: given([correctsWords(document), document.paymentTerms, ...document.paymentMeans.map(({ words }) => words)]),
    work: [...(job?.workDone ?? []), ...(job?.found ?? []), ...(job?.advice ?? [])],
    hasWork: job !== undefined,
    proofOwed: job?.proofOwed === undefined ? undefined : `${job.proofOwed.what}, by ${day(job.proofOwed.by)}.`,
    guarantee: job?.guarantee,
    account: document.paymentMeans.find(({ account }) => account?.iban !== undefined)?.account?.iban,
  };
}
