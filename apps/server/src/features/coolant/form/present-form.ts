import type { UnitPreference } from '#libs/units';
import { saidFigure } from '../units/measure.ts';
import { unitMark } from '../units/unit-mark.ts';
import type { ReadForm } from './bench-field.ts';
import type { FieldGroup } from './field-group.ts';
import { type BenchFieldView, presentFields } from './present-fields.ts';
import { keepFigures } from './standing-figures.ts';

interface GroupView {
  readonly title: string;
  readonly isFolded: boolean;
  readonly isOpen: boolean;
  /** The figures in force, beside the title of a folded group. */
  readonly summary: string;
  readonly rows: readonly BenchFieldView[];
}

export interface BenchFormView {
  readonly action: string;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  readonly groups: readonly GroupView[];
  readonly errors: readonly { readonly field: string; readonly message: string }[];
}

function groupView(group: FieldGroup, form: ReadForm, units: UnitPreference): GroupView {
  const inForce = group.fields.flatMap((field) => {
    const figure = form.figures[field.name];
    return field.kind === 'figure' && figure !== undefined ? [saidFigure(figure, field.quantity, units)] : [];
  });
  return {
    title: group.title,
    isFolded: group.isFolded,
    isOpen: group.fields.some(({ name }) => form.errors[name] !== undefined || form.states[name] === 'typed'),
    summary: inForce.join(', '),
    rows: presentFields(group.fields, form, units),
  };
}

/** What was mistyped, in the order of the form. */
export const summaryOf = ({ errors }: ReadForm): BenchFormView['errors'] =>
  Object.entries(errors).map(([field, message]) => ({ field, message }));

/** The form of a page: fields in their groups, what travels along with them, and what has to change. */
export function presentForm(
  form: ReadForm,
  { groups, units, action }: { groups: readonly FieldGroup[]; units: UnitPreference; action: string },
): BenchFormView {
  return {
    action,
    hidden: [
      { name: 'in', value: unitMark(units) },
      { name: 'was', value: keepFigures(form) },
    ],
    groups: groups.map((group) => groupView(group, form, units)),
    errors: summaryOf(form),
  };
}
