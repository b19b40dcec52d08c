import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { StaffMember } from './staff.repository.ts';

const ROLE_WORDS = { desk: 'Service desk', technician: 'Technician', owner: 'Owner' } as const;

export interface PeopleView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  people: { displayName: string; name: string; role: string; isActive: boolean; act: string; newSecret: string; isSelf: boolean }[];
  action: string;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentPeople(people: readonly StaffMember[], { form, selfId }: { form: FormState; selfId: string }): PeopleView {
  const active = people.filter(({ isActive }) => isActive).length;
  return {
    title: 'People',
    head: {
      title: 'People',
      lead: active === 1 ? 'One person works here.' : `${active} people work here.`,
      rest: 'A closed account can’t sign in; what it did stays on record.',
      actions: [{ href: urls.ownSecret, label: 'Your secret' }],
    },
    people: people.map(({ id, displayName, name, role, isActive }) => ({
      displayName,
      name,
      role: ROLE_WORDS[role],
      isActive,
      isSelf: id === selfId,
      act: isActive ? urls.closeAccount(id) : urls.openAccount(id),
      newSecret: urls.secretOf(id),
    })),
    action: urls.people,
    errors: form.summary,
    fields: formFields(form, [
      { name: 'displayName', label: 'Name', required: true, maxlength: 80, autocomplete: 'off' },
      { name: 'name', label: 'What they type at the door', required: true, maxlength: 40, autocomplete: 'off' },
      {
        name: 'role',
        label: 'What they do here',
        value: 'technician',
        options: Object.entries(ROLE_WORDS).map(([value, label]) => ({ value, label })),
      },
      {
        name: 'secret',
        label: 'First secret',
        type: 'password',
        required: true,
        maxlength: 200,
        autocomplete: 'new-password',
        hint: 'At least 12 letters.',
      },
    ]),
  };
}
