import type { FormState } from '../../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../../web/form-field.ts';
import type { LogSetting } from '../log-setting.ts';

/** What stands in the fields before anybody types. */
export type SettingValues = Partial<Record<'role' | 'loggedOn' | 'thermostatKind' | 'nominalOpeningC' | 'heater' | 'readings', string>>;

const KINDS = [
  { value: '', label: 'Choose' },
  { value: 'wax', label: 'Plain wax' },
  { value: 'heated-wax', label: 'Electrically heated' },
  { value: 'twin', label: 'Two thermostats' },
  { value: 'motor-valve', label: 'Motor valve or electric pump' },
  { value: 'hybrid', label: 'Hybrid or electric car' },
  { value: 'unknown', label: 'Not known' },
];

export const valuesOf = ({ role, loggedOn, thermostatKind, nominalOpeningC, heater }: LogSetting): SettingValues => ({
  role,
  loggedOn,
  thermostatKind,
  heater,
  nominalOpeningC: nominalOpeningC === null ? '' : String(nominalOpeningC),
});

/** The questions about a log: the kind of thermostat first. */
export function settingFields(form: FormState, values: SettingValues): Record<string, FieldView> {
  return formFields(form, [
    {
      name: 'thermostatKind',
      label: 'Kind of thermostat',
      value: values.thermostatKind ?? '',
      options: KINDS,
      required: true,
      hint: 'Only plain wax has one opening temperature; of the others the behaviour is told.',
    },
    {
      name: 'nominalOpeningC',
      label: 'Marked opening temperature',
      value: values.nominalOpeningC ?? '',
      unit: '°C',
      inputmode: 'decimal',
      optional: true,
      maxlength: 5,
      hint: 'Of the part that was in the car on this drive: its stamp, or the catalogue.',
    },
    {
      name: 'role',
      label: 'Driven',
      value: values.role ?? 'before',
      options: [
        { value: 'before', label: 'Before the repair' },
        { value: 'after', label: 'After the repair' },
      ],
    },
    {
      name: 'loggedOn',
      label: 'Day',
      type: 'date',
      value: values.loggedOn ?? '',
      required: true,
      hint: 'Before and after need not be the same day.',
    },
    {
      name: 'heater',
      label: 'Heater while driving',
      value: values.heater ?? 'unknown',
      options: [
        { value: 'unknown', label: 'Not known' },
        { value: 'off', label: 'Off' },
        { value: 'on', label: 'On' },
      ],
    },
    {
      name: 'readings',
      label: 'Readings from a tester',
      value: values.readings ?? '',
      lines: 6,
      optional: true,
      placeholder: '0 18\n1:30 27\n3 36',
      hint: 'Without a file: minutes and °C, a line each, four at least; one a minute from a cold start is good.',
    },
  ]);
}
