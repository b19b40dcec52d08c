import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { Vehicle } from './vehicles.repository.ts';

export interface VehicleFormView {
  title: string;
  head: { title: string; lead: string };
  action: string;
  back: string;
  version: number | undefined;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

/** The trade's kinds of engine thermostat, in words. */
export const THERMOSTAT_WORDS: Readonly<Record<string, string>> = {
  unknown: 'Not known yet',
  wax: 'Plain wax',
  'heated-wax': 'Electrically heated wax',
  twin: 'Two thermostats',
  'motor-valve': 'Motor valve or electric pump',
  hybrid: 'Hybrid or electric car',
};

const builtValue = ({ buildYear, buildMonth }: Vehicle): string =>
  [buildYear ?? '', buildMonth === null ? '' : String(buildMonth).padStart(2, '0')].filter((part) => part !== '').join('-');

export function presentVehicleForm(
  form: FormState,
  { customer, vehicle }: { customer: { id: string; name: string }; vehicle: Vehicle | undefined },
): VehicleFormView {
  const title = vehicle ? 'Change a vehicle' : 'Add a vehicle';
  return {
    title,
    head: { title, lead: `${customer.name}${vehicle ? `, ${vehicle.registration}` : ''}.` },
    action: vehicle ? urls.editVehicle(vehicle.id) : urls.newVehicle(customer.id),
    back: vehicle ? urls.vehicle(vehicle.id) : urls.customer(customer.id),
    version: vehicle?.version,
    errors: form.summary,
    fields: formFields(form, [
      {
        name: 'registration',
        label: 'Registration',
        value: vehicle?.registration ?? '',
        required: true,
        maxlength: 16,
        autocomplete: 'off',
      },
      { name: 'make', label: 'Make', value: vehicle?.make ?? '', required: true, maxlength: 60 },
      { name: 'model', label: 'Model', value: vehicle?.model ?? '', required: true, maxlength: 80 },
      {
        name: 'engineCode',
        label: 'Engine code',
        value: vehicle?.engineCode ?? '',
        optional: true,
        maxlength: 20,
        hint: 'With the build month it narrows the catalogue’s list for nothing.',
      },
      {
        name: 'built',
        label: 'Year and month of build',
        value: vehicle ? builtValue(vehicle) : '',
        optional: true,
        placeholder: '2017-03',
      },
      { name: 'vin', label: 'VIN', value: vehicle?.vin ?? '', optional: true, maxlength: 17, autocomplete: 'off' },
      {
        name: 'thermostatKind',
        label: 'Kind of thermostat',
        value: vehicle?.thermostatKind ?? 'unknown',
        options: Object.entries(THERMOSTAT_WORDS).map(([value, label]) => ({ value, label })),
        hint: 'Only plain wax has one opening temperature.',
      },
      { name: 'note', label: 'Note', value: vehicle?.note ?? '', lines: 3, optional: true, maxlength: 2000 },
    ]),
  };
}
