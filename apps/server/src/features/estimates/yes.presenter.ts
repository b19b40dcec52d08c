import type { FormState } from '../../platform/pages/form-state.ts';
import { isoDay, timeText } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import { PACKAGE_ROWS } from './dto/yes.dto.ts';
import type { JobFacts } from './estimates.repository.ts';
import { packageOutline } from './package-outlines.ts';

export interface YesFormView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  back: string;
  fields: Record<string, FieldView>;
  packages: { number: number; name: FieldView | undefined; gross: FieldView | undefined; isTicked: boolean }[];
  oldPartBack: boolean;
  errors: FormState['summary'];
}

export function presentYesForm(
  form: FormState,
  { job, now, timeZone, currency }: { job: JobFacts; now: Date; timeZone: string; currency: string },
): YesFormView {
  const outline = packageOutline(job.templateKey);
  const isFresh = form.summary.length === 0;
  const rows = PACKAGE_ROWS.map((number, index) => ({
    number,
    fields: formFields(form, [
      { name: `name${number}`, label: `Package ${number}`, value: outline[index] ?? '', maxlength: 120, optional: true },
      { name: `gross${number}`, label: 'Price with tax', unit: currency, inputmode: 'decimal', maxlength: 10, short: true, optional: true },
    ]),
    isTicked: isFresh ? index < outline.length : form.values[`yes${number}`] === 'on',
  }));
  return {
    title: 'The yes',
    head: {
      title: 'The yes',
      lead: `${job.customerName}, ${job.car}.`,
      rest: 'Who said yes to what, when, how, and up to which sum. Work outside it needs a new yes; making safe and closing up never does.',
    },
    action: urls.yes(job.id),
    back: urls.job(job.id),
    errors: form.summary,
    oldPartBack: form.values['oldPartBack'] === 'on',
    packages: rows.map(({ number, fields, isTicked }) => ({
      number,
      name: fields[`name${number}`],
      gross: fields[`gross${number}`],
      isTicked,
    })),
    fields: formFields(form, [
      { name: 'saidBy', label: 'Who said yes', value: job.customerName, required: true, maxlength: 120 },
      {
        name: 'how',
        label: 'How',
        value: 'phone',
        options: [
          { value: 'phone', label: 'By phone' },
          { value: 'in-person', label: 'In person' },
          { value: 'message', label: 'By message' },
          { value: 'signature', label: 'By signature' },
        ],
      },
      { name: 'saidDay', label: 'Day', type: 'date', value: isoDay(now, timeZone), required: true },
      { name: 'saidTime', label: 'Time', type: 'time', value: timeText(now, timeZone), required: true },
      {
        name: 'ceiling',
        label: 'At most, with tax',
        unit: currency,
        inputmode: 'decimal',
        maxlength: 10,
        required: true,
        hint: 'Nothing above it is done without a new yes.',
      },
      { name: 'words', label: 'In the customer’s words', lines: 2, optional: true, maxlength: 500 },
    ]),
  };
}
