import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { VehicleForJob } from './job-page.types.ts';
import type { TemplateChoice } from './jobs.repository.ts';

export interface TakeComplaintView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  back: string;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentTakeComplaint(
  form: FormState,
  { vehicle, templates }: { vehicle: VehicleForJob; templates: readonly TemplateChoice[] },
): TakeComplaintView {
  const earlier = vehicle.jobs.map(({ id, number, what }) => ({ value: id, label: `Job ${number}, ${what}` }));
  return {
    title: 'Take the complaint',
    head: {
      title: 'Take the complaint',
      lead: `${vehicle.car}, ${vehicle.registration}, ${vehicle.customerName}.`,
      rest: 'If the temperature climbs past normal or the light comes on, the car is not driven: have it fetched.',
    },
    action: urls.newJob(vehicle.id),
    back: urls.vehicle(vehicle.id),
    errors: form.summary,
    fields: formFields(form, [
      {
        name: 'complaint',
        label: 'What the customer says',
        lines: 3,
        required: true,
        maxlength: 1000,
        placeholder: 'Gauge never comes up, heater lukewarm …',
      },
      { name: 'complaintWhen', label: 'When it happens', optional: true, maxlength: 300 },
      {
        name: 'template',
        label: 'What is to be done',
        value: templates[0]?.key ?? '',
        options: templates.map(({ key, name }) => ({ value: key, label: name })),
      },
      {
        name: 'comebackOf',
        label: 'Comes back after',
        optional: true,
        options: [{ value: '', label: 'No earlier job of ours' }, ...earlier],
      },
    ]),
  };
}
