import type { UnitPreference } from '#libs/units';
import type { FieldView } from '../../../web/form-field.ts';
import { measureOf } from '../units/measure.ts';
import type { BenchField, ReadForm } from './bench-field.ts';

/** A field with the classes of its place: the choice it depends on, half the width or all of it. */
export interface BenchFieldView {
  readonly place: string;
  readonly field: FieldView;
}

function hintOf(field: BenchField, form: ReadForm): string | undefined {
  const state = form.states[field.name];
  const standing = field.kind === 'day' ? undefined : field.standing;
  if (standing && (state === standing.how || state === 'kept') && standing.said !== '') {
    return [standing.said, field.hint].filter((part) => part !== undefined).join(' ');
  }
  return field.hint;
}

function inputOf(field: BenchField, text: string, units: UnitPreference): Partial<FieldView> {
  switch (field.kind) {
    case 'figure': {
      const { unit } = measureOf(field.quantity, units);
      const hasSign = field.least < 0; // the keypad of decimals has no minus on many phones
      return {
        ...(unit === '' ? {} : { unit }),
        ...(hasSign ? {} : { inputmode: 'decimal' }),
        ...(field.isOptional === true && field.isHalf !== true ? { optional: true } : {}),
        maxlength: 20,
        autocomplete: 'off',
      };
    }
    case 'choice':
      return { options: field.options.map((option) => ({ ...option, selected: option.value === text })) };
    case 'day':
      return { type: 'date', ...(field.isOptional === true ? { optional: true } : {}) };
  }
}

/** The fields as the template draws them: solid where known or typed, broken where assumed, the message below. */
export function presentFields(fields: readonly BenchField[], form: ReadForm, units: UnitPreference): readonly BenchFieldView[] {
  return fields.map((field) => {
    const text = form.texts[field.name] ?? '';
    const error = form.errors[field.name];
    const hint = hintOf(field, form);
    return {
      place: [field.when, field.isHalf === true ? 'half' : undefined].filter((name) => name !== undefined).join(' '),
      field: {
        id: field.name,
        name: field.name,
        label: field.label,
        value: text,
        ...inputOf(field, text, units),
        ...(form.states[field.name] === 'assumed' ? { assumed: true } : {}),
        ...(error === undefined ? {} : { error }),
        ...(hint === undefined ? {} : { hint }),
      },
    };
  });
}
