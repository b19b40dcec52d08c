import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { StaffMember } from './staff.repository.ts';

export interface SecretView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  back: string;
  button: string;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
  /** Beside the form. */
  other?: { href: string; label: string };
}

const NEW_SECRET = {
  name: 'newSecret',
  label: 'New secret',
  type: 'password',
  autocomplete: 'new-password',
  maxlength: 200,
  required: true,
  hint: 'At least 12 letters: three or four words are easy to keep.',
};

export function presentOwnSecret(form: FormState, back: string): SecretView {
  return {
    title: 'Your secret',
    head: { title: 'Your secret', lead: 'What you type at the door.', rest: 'Other screens where you are signed in are signed out.' },
    action: urls.ownSecret,
    back,
    button: 'Change my secret',
    other: { href: urls.ownPin, label: 'Your PIN for tablets' },
    errors: form.summary,
    fields: formFields(form, [
      { name: 'oldSecret', label: 'Secret so far', type: 'password', autocomplete: 'current-password', maxlength: 200, required: true },
      NEW_SECRET,
    ]),
  };
}

/** Short, because it opens nothing but a tablet that is enrolled, and guessing there is limited. */
export function presentOwnPin(form: FormState): SecretView {
  return {
    title: 'Your PIN',
    head: { title: 'Your PIN', lead: 'What you type on the workshop’s tablets.', rest: 'It opens nothing else.' },
    action: urls.ownPin,
    back: urls.ownSecret,
    button: 'Set my PIN',
    errors: form.summary,
    fields: formFields(form, [
      { name: 'oldSecret', label: 'Your secret', type: 'password', autocomplete: 'current-password', maxlength: 200, required: true },
      {
        name: 'pin',
        label: 'New PIN',
        type: 'password',
        inputmode: 'numeric',
        autocomplete: 'off',
        maxlength: 8,
        required: true,
        short: true,
        hint: '4 to 8 digits, not all the same and not in a row.',
      },
    ]),
  };
}

export function presentSecretOf(person: StaffMember, form: FormState): SecretView {
  return {
    title: `A new secret for ${person.displayName}`,
    head: {
      title: `A new secret for ${person.displayName}`,
      lead: `For somebody who forgot theirs; ${person.name} is what they type at the door.`,
      rest: 'They are signed out everywhere, and can change it to one that only they know.',
    },
    action: urls.secretOf(person.id),
    back: urls.people,
    button: 'Set this secret',
    errors: form.summary,
    fields: formFields(form, [{ ...NEW_SECRET, autocomplete: 'off' }]),
  };
}
