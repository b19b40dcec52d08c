import type { FormState } from '../platform/pages/form-state.ts';

export interface Option {
  value: string;
  label: string;
}

export interface FieldSpec {
  name: string;
  label: string;
  value?: string;
  unit?: string;
  hint?: string;
  type?: string;
  /** Of a file: a photo, and the camera is offered first. */
  camera?: boolean;
  inputmode?: string;
  autocomplete?: string;
  maxlength?: number;
  placeholder?: string;
  required?: boolean;
  optional?: boolean;
  assumed?: boolean;
  short?: boolean;
  lines?: number;
  options?: readonly Option[];
}

export interface FieldView extends Omit<FieldSpec, 'options'> {
  id: string;
  error?: string;
  options?: readonly (Option & { selected: boolean })[];
}

/** A field as the partial `field` draws it: what was typed before wins over what is stored, and its error stands beside it. */
export function formField(form: FormState, { options, ...spec }: FieldSpec): FieldView {
  const value = form.values[spec.name] ?? spec.value ?? '';
  const error = form.errors[spec.name];
  return {
    ...spec,
    id: spec.name,
    value,
    ...(error === undefined ? {} : { error }),
    ...(options === undefined ? {} : { options: options.map((option) => ({ ...option, selected: option.value === value })) }),
  };
}

/** Fields by name, for a template: {{> field fields.phone}}. */
export function formFields(form: FormState, specs: readonly FieldSpec[]): Record<string, FieldView> {
  return Object.fromEntries(specs.map((spec) => [spec.name, formField(form, spec)]));
}
