import type { Device } from '../../platform/access/devices.ts';
import { EMPTY_FORM, type FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { TabletPerson } from './tablet-facts.ts';

export interface TabletDoorView {
  title: string;
  action: string;
  form: string;
  lead: string;
  back: string | undefined;
  people: { id: string; value: string; label: string; note?: string; checked: boolean; disabled: boolean }[] | null;
  fields: FieldView[];
  button: string;
  other: { href: string; label: string };
}

const asForm = (field: string, error: string | undefined): FormState =>
  error === undefined ? EMPTY_FORM : { values: {}, errors: { [field]: error }, summary: [{ field, message: error }] };

/** A device that is not enrolled yet. */
export function presentEnrol(error?: string): TabletDoorView {
  return {
    title: 'Enrol this tablet',
    action: urls.tabletEnrol,
    form: 'enrol',
    lead: 'The desk or the owner makes a code at Bays, Tablets. It is good for 15 minutes and for one tablet.',
    back: undefined,
    people: null,
    fields: Object.values(
      formFields(asForm('code', error), [{ name: 'code', label: 'Code', maxlength: 20, autocomplete: 'off', required: true }]),
    ),
    button: 'Enrol this tablet',
    other: { href: `${urls.door}?secret=1`, label: 'Sign in with name and secret' },
  };
}

/** Who holds the tablet now. */
export function presentPin(
  tablet: Device,
  people: readonly TabletPerson[],
  { error, back, staffId }: { error?: string; back?: string | undefined; staffId?: string },
): TabletDoorView {
  return {
    title: 'Who are you?',
    action: urls.tabletSignIn,
    form: 'pin',
    lead: `This is the tablet “${tablet.name}”.`,
    back,
    people: people.map(({ id, displayName, hasPin }, index) => ({
      id: index === 0 ? 'staffId' : `staff-${id}`,
      value: id,
      label: displayName,
      ...(hasPin ? {} : { note: 'no PIN yet: set one at Your secret' }),
      checked: id === staffId,
      disabled: !hasPin,
    })),
    fields: Object.values(
      formFields(asForm('pin', error), [
        {
          name: 'pin',
          label: 'PIN',
          type: 'password',
          inputmode: 'numeric',
          autocomplete: 'off',
          maxlength: 8,
          required: true,
          short: true,
        },
      ]),
    ),
    button: 'Sign in',
    other: { href: `${urls.door}?secret=1`, label: 'Sign in with name and secret' },
  };
}
