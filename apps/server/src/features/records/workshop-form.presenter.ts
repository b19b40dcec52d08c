import type { FormState } from '../../platform/pages/form-state.ts';
import type { Workshop } from '../../platform/workshop-facts.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';

export interface WorkshopFormView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  action: string;
  back: string;
  version: number;
  isOnePerson: boolean;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentWorkshopForm(form: FormState, workshop: Workshop): WorkshopFormView {
  const text = (name: string, label: string, value: string, rest: object = {}): { name: string; label: string; value: string } => ({
    name,
    label,
    value,
    ...rest,
  });
  return {
    title: 'Workshop details',
    head: {
      title: 'Workshop details',
      lead: 'What stands on the paper, and what the benches reckon with.',
      rest: 'Issued invoices keep what they said.',
      actions: [{ href: urls.invoicing, label: 'Invoice settings' }],
    },
    action: urls.workshop,
    back: urls.office,
    version: workshop.version,
    isOnePerson: workshop.isOnePerson,
    errors: form.summary,
    fields: formFields(form, [
      text('name', 'Name', workshop.name, { required: true, maxlength: 120 }),
      text('address', 'Street', workshop.addressLines.join('\n'), { lines: 2, maxlength: 300 }),
      text('postcode', 'Postcode', workshop.postcode, { maxlength: 20, short: true }),
      text('city', 'Town', workshop.city, { maxlength: 80 }),
      text('country', 'Country', workshop.country, { maxlength: 2, short: true, required: true }),
      text('phone', 'Phone', workshop.phone, { maxlength: 40 }),
      text('email', 'E-mail', workshop.email, { maxlength: 200 }),
      text('vatId', 'VAT number', workshop.vatId, { maxlength: 30 }),
      text('payTo', 'Account for payments (IBAN)', workshop.payTo, { maxlength: 42, optional: true }),
      {
        ...text('timeZone', 'Time zone', workshop.timeZone),
        options: Intl.supportedValuesOf('timeZone').map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') })),
      },
      text('currency', 'Currency', workshop.currency, { maxlength: 3, short: true, required: true }),
      text('labourRate', 'An hour of labour, before tax', workshop.labourRate, {
        unit: workshop.currency,
        inputmode: 'decimal',
        short: true,
      }),
      text('partsMarkupPct', 'Mark-up on parts', workshop.partsMarkupPct, { unit: '%', inputmode: 'decimal', short: true }),
      text('wasteChargePerL', 'Waste charge for a litre', workshop.wasteChargePerL, {
        unit: workshop.currency,
        inputmode: 'decimal',
        short: true,
      }),
      text('vatRatePct', 'VAT rate', workshop.vatRatePct, { unit: '%', inputmode: 'decimal', short: true }),
      text('payWithinDays', 'Pay within', String(workshop.payWithinDays), { unit: 'days', inputmode: 'numeric', short: true }),
      text('returnLeadDays', 'Returns leave before the last day by', String(workshop.returnLeadDays), {
        unit: 'days',
        inputmode: 'numeric',
        short: true,
      }),
      text('labelFromNet', 'A piece that can’t go back has a label from', workshop.labelFromNet, {
        unit: workshop.currency,
        inputmode: 'decimal',
        short: true,
      }),
      text('altitudeM', 'Height above the sea', String(workshop.altitudeM), { unit: 'm', short: true }),
      text('coldestAirC', 'Coldest air to expect', String(workshop.coldestAirC), { unit: '°C', short: true }),
      text('hottestAirC', 'Hottest air to expect', String(workshop.hottestAirC), { unit: '°C', short: true }),
      text('guaranteeWords', 'Guarantee on the invoice', workshop.guaranteeWords, {
        lines: 2,
        maxlength: 300,
        optional: true,
        hint: 'Beside the customer’s legal rights, never instead.',
      }),
    ]),
  };
}
