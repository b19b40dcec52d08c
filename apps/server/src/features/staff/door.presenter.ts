import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { TIME_ZONES } from './dto/first-owner.dto.ts';

export interface DoorView {
  title: string;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentSignIn(form: FormState, back: string | undefined): DoorView & { back: string | undefined } {
  return {
    title: 'Sign in',
    back,
    errors: form.summary,
    fields: formFields(form, [
      { name: 'name', label: 'Your name here', autocomplete: 'username', maxlength: 80, required: true },
      { name: 'secret', label: 'Your secret', type: 'password', autocomplete: 'current-password', maxlength: 200, required: true },
    ]),
  };
}

export function presentFirstOwner(form: FormState): DoorView {
  return {
    title: 'Whose workshop is this?',
    errors: form.summary,
    fields: formFields(form, [
      { name: 'workshopName', label: 'Name of the workshop', maxlength: 120, required: true },
      { name: 'displayName', label: 'Your name', autocomplete: 'name', maxlength: 80, required: true },
      { name: 'name', label: 'What you type at the door', autocomplete: 'username', maxlength: 40, required: true },
      {
        name: 'secret',
        label: 'Your secret',
        type: 'password',
        autocomplete: 'new-password',
        maxlength: 200,
        required: true,
        hint: 'At least 12 letters: three or four words are easy to keep.',
      },
      {
        name: 'timeZone',
        label: 'Time zone',
        value: 'Europe/London',
        options: TIME_ZONES.map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') })),
      },
      { name: 'currency', label: 'Currency', value: 'EUR', maxlength: 3, short: true, required: true },
      { name: 'country', label: 'Country', value: 'IE', maxlength: 2, short: true, required: true },
    ]),
  };
}
