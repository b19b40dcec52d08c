import type { FormState } from '../../../platform/pages/form-state.ts';
import type { Workshop } from '../../../platform/workshop-facts.ts';
import { type FieldSpec, type FieldView, formFields } from '../../../web/form-field.ts';
import { urls } from '../../../web/urls.ts';
import { typedPartsRule } from './parts-rule.ts';

interface MenuRow {
  key: string;
  name: string;
  priceNet: string | null;
}

export interface TillSettingsView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  back: string;
  version: number;
  cashAccounting: boolean;
  paper: Record<string, FieldView>;
  tax: Record<string, FieldView>;
  prices: Record<string, FieldView>;
  menu: { name: string; price: string }[];
  menuAction: string;
  menuFields: Record<string, FieldView>;
  currency: string;
  errors: FormState['summary'];
}

const PAPER: readonly Omit<FieldSpec, 'value'>[] = [
  {
    name: 'paper',
    label: 'Paper',
    options: [
      { value: 'a4', label: 'A4' },
      { value: 'letter', label: 'US Letter' },
    ],
  },
  {
    name: 'pdfForm',
    label: 'PDF of an invoice',
    options: [
      { value: 'hybrid', label: 'With the structured invoice in it' },
      { value: 'hybrid-for-business', label: 'With it for customers with a VAT number' },
      { value: 'plain', label: 'The page alone' },
    ],
    hint: 'Files that were made stay as they are.',
  },
];

const CATEGORIES = [
  { value: 'S', label: 'VAT or sales tax is charged' },
  { value: 'Z', label: 'Zero rate' },
  { value: 'E', label: 'Exempt' },
  { value: 'O', label: 'Outside the scope of VAT' },
];

export function presentTillSettings(
  workshop: Workshop,
  { form, priceForm, menu }: { form: FormState; priceForm: FormState; menu: readonly MenuRow[] },
): TillSettingsView {
  const { currency } = workshop;
  const rule = typedPartsRule(workshop.partsRule);
  const money = { unit: currency, inputmode: 'decimal', short: true } as const;
  return {
    title: 'Invoice settings',
    head: { title: 'Invoice settings', lead: 'What the till prints, charges and takes.', rest: 'Issued invoices keep what they said.' },
    action: urls.invoicing,
    back: urls.office,
    version: workshop.version,
    cashAccounting: workshop.cashAccounting,
    currency,
    paper: formFields(
      form,
      PAPER.map((spec) => ({ ...spec, value: spec.name === 'paper' ? workshop.paper : workshop.pdfForm })),
    ),
    tax: formFields(form, [
      {
        name: 'vatCategory',
        label: 'Tax on our work',
        value: workshop.vatCategory,
        options: CATEGORIES,
        hint: 'The rate stands in the workshop details.',
      },
      {
        name: 'exemptionWords',
        label: 'Why no VAT is charged',
        value: workshop.exemptionWords,
        maxlength: 200,
        optional: true,
        hint: 'Needed where we are exempt; printed.',
      },
      { name: 'companyNumber', label: 'Number in the company register', value: workshop.companyNumber, maxlength: 40, optional: true },
      {
        name: 'simplifiedLimit',
        label: 'Simplified invoices up to, with tax',
        value: workshop.simplifiedLimit ?? '',
        optional: true,
        ...money,
        hint: 'Your country says how much; empty: never.',
      },
      {
        name: 'depositForm',
        label: 'Money before the work',
        value: workshop.depositForm,
        options: [
          { value: 'tax-document', label: 'Gets its own tax invoice' },
          { value: 'prepaid', label: 'Is noted as prepaid' },
        ],
        hint: 'As your country wants it.',
      },
    ]),
    prices: formFields(form, [
      {
        name: 'partsKind',
        label: 'Price of a part from its cost',
        value: rule.kind,
        options: [
          { value: 'mark-up', label: `Mark-up of ${workshop.partsMarkupPct} % (workshop details)` },
          { value: 'margin', label: 'A share of the price stays' },
          { value: 'amount', label: 'A fixed sum on top' },
          { value: 'bands', label: 'Mark-up by what it costs' },
        ],
      },
      { name: 'partsFigure', label: 'Share in % or sum', value: rule.figure, optional: true, inputmode: 'decimal', short: true },
      {
        name: 'partsBands',
        label: 'Bands, one to a line',
        value: rule.bands,
        lines: 4,
        maxlength: 500,
        optional: true,
        hint: 'Such as “20: 60” for 60 % on costs up to 20; the last line “above: 25”.',
      },
      { name: 'partsRoundTo', label: 'Round a part’s price to', value: rule.roundTo, optional: true, ...money },
      {
        name: 'consumablesPct',
        label: 'Small materials, of the labour',
        value: workshop.consumablesPct === '0' ? '' : workshop.consumablesPct,
        unit: '%',
        inputmode: 'decimal',
        short: true,
        optional: true,
      },
      { name: 'consumablesMost', label: 'Small materials, at most', value: workshop.consumablesMost ?? '', optional: true, ...money },
    ]),
    menu: menu.map(({ name, priceNet }) => ({ name, price: priceNet ?? 'by the hours' })),
    menuAction: urls.menuPrice,
    menuFields: formFields(priceForm, [
      {
        name: 'templateKey',
        label: 'Work',
        value: menu[0]?.key ?? '',
        options: menu.map(({ key, name }) => ({ value: key, label: name })),
      },
      { name: 'priceNet', label: 'Labour, before tax', optional: true, ...money, hint: 'Empty: by the hours again.' },
    ]),
    errors: [...form.summary, ...priceForm.summary],
  };
}
