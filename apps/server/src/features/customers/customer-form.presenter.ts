import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { Customer } from './customers.repository.ts';

export interface CustomerFormView {
  title: string;
  head: { title: string; lead: string };
  action: string;
  back: string;
  version: number | undefined;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentCustomerForm(form: FormState, customer: Customer | undefined): CustomerFormView {
  const title = customer ? 'Change a customer' : 'Add a customer';
  return {
    title,
    head: { title, lead: customer ? customer.name : 'A name is enough to begin with.' },
    action: customer ? urls.editCustomer(customer.id) : urls.newCustomer,
    back: customer ? urls.customer(customer.id) : urls.counter,
    version: customer?.version,
    errors: form.summary,
    fields: formFields(form, [
      { name: 'name', label: 'Name', value: customer?.name ?? '', required: true, maxlength: 120, autocomplete: 'off' },
      {
        name: 'kind',
        label: 'Person or business',
        value: customer?.kind ?? 'person',
        options: [
          { value: 'person', label: 'Person' },
          { value: 'business', label: 'Business' },
        ],
      },
      { name: 'phone', label: 'Phone', value: customer?.phone ?? '', type: 'tel', optional: true, maxlength: 30, autocomplete: 'off' },
      { name: 'email', label: 'E-mail', value: customer?.email ?? '', type: 'email', optional: true, maxlength: 200, autocomplete: 'off' },
      { name: 'address', label: 'Street', value: customer?.addressLines.join('\n') ?? '', lines: 2, optional: true, maxlength: 300 },
      { name: 'postcode', label: 'Postcode', value: customer?.postcode ?? '', optional: true, short: true, maxlength: 20 },
      { name: 'city', label: 'Town', value: customer?.city ?? '', optional: true, maxlength: 80 },
      {
        name: 'country',
        label: 'Country',
        value: customer?.country ?? '',
        optional: true,
        short: true,
        maxlength: 2,
        hint: 'Two capitals; empty means the workshop’s own.',
      },
      { name: 'vatId', label: 'VAT number', value: customer?.vatId ?? '', optional: true, maxlength: 30 },
      { name: 'note', label: 'Note', value: customer?.note ?? '', lines: 3, optional: true, maxlength: 2000 },
    ]),
  };
}
