import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import { termsText } from '../../web/terms-text.ts';
import type { Supplier } from './suppliers.repository.ts';

export interface SuppliersView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  suppliers: { href: string; name: string; phone: string; account: string; terms: string; carriage: string }[];
  isEmpty: boolean;
  addHref: string;
}

export function presentSuppliers(suppliers: readonly Supplier[], currency: string): SuppliersView {
  return {
    title: 'Suppliers',
    head: {
      title: 'Suppliers',
      lead: suppliers.length === 0 ? 'No supplier is on record yet.' : `${suppliers.length} on record, with their terms.`,
      rest: 'The terms give each piece its last day to go back, and say what opening its box costs.',
      actions: [
        { href: urls.orders, label: 'To the orders' },
        { href: urls.newSupplier, label: 'Add a supplier', main: true },
      ],
    },
    suppliers: suppliers.map((supplier) => ({
      href: urls.editSupplier(supplier.id),
      name: supplier.name,
      phone: supplier.phone,
      account: supplier.accountNumber,
      terms: termsText(supplier, currency),
      carriage: Number(supplier.carriage) === 0 ? 'none' : moneyText(supplier.carriage, currency),
    })),
    isEmpty: suppliers.length === 0,
    addHref: urls.newSupplier,
  };
}

export interface SupplierFormView {
  title: string;
  head: { title: string; lead: string };
  action: string;
  back: string;
  version: number | undefined;
  fields: Record<string, FieldView>;
  isUnopenedOnly: boolean;
  errors: FormState['summary'];
}

export function presentSupplierForm(
  form: FormState,
  { supplier, currency }: { supplier: Supplier | undefined; currency: string },
): SupplierFormView {
  const title = supplier ? 'Change a supplier' : 'Add a supplier';
  const isFresh = form.summary.length === 0;
  return {
    title,
    head: {
      title,
      lead: supplier ? `${supplier.name}. Pieces that are here already keep their last day.` : 'The terms are on their invoice.',
    },
    action: supplier ? urls.editSupplier(supplier.id) : urls.newSupplier,
    back: urls.suppliers,
    version: supplier?.version,
    errors: form.summary,
    isUnopenedOnly: isFresh ? (supplier?.unopenedOnly ?? false) : form.values['unopenedOnly'] === 'on',
    fields: formFields(form, [
      { name: 'name', label: 'Name', value: supplier?.name ?? '', required: true, maxlength: 120, autocomplete: 'off' },
      { name: 'accountNumber', label: 'Our account number', value: supplier?.accountNumber ?? '', optional: true, maxlength: 40 },
      { name: 'phone', label: 'Phone', value: supplier?.phone ?? '', type: 'tel', optional: true, maxlength: 30, autocomplete: 'off' },
      { name: 'email', label: 'E-mail', value: supplier?.email ?? '', type: 'email', optional: true, maxlength: 200, autocomplete: 'off' },
      {
        name: 'returnDays',
        label: 'Takes back within',
        value: supplier ? String(supplier.returnDays) : '',
        unit: 'days',
        inputmode: 'numeric',
        required: true,
        maxlength: 3,
        hint: '0 if nothing is taken back.',
      },
      {
        name: 'windowStart',
        label: 'Counted from',
        value: supplier?.windowStart ?? 'arrived',
        options: [
          { value: 'arrived', label: 'Arrival here' },
          { value: 'ordered', label: 'The day of the order' },
          { value: 'invoiced', label: 'The invoice (reckoned from arrival, so never too late)' },
        ],
      },
      { name: 'restockingPct', label: 'Keeps', value: supplier?.restockingPct ?? '0', unit: '%', inputmode: 'decimal', maxlength: 6 },
      {
        name: 'daysToCredit',
        label: 'Credits within',
        value: String(supplier?.daysToCredit ?? 30),
        unit: 'days',
        inputmode: 'numeric',
        maxlength: 3,
      },
      {
        name: 'carriage',
        label: 'Carriage of one order',
        value: supplier?.carriage ?? '0',
        unit: currency,
        inputmode: 'decimal',
        maxlength: 10,
        hint: '0 for a local driver.',
      },
      {
        name: 'returnCarriage',
        label: 'One trip back',
        value: supplier?.returnCarriage ?? '0',
        unit: currency,
        inputmode: 'decimal',
        maxlength: 10,
      },
    ]),
  };
}
