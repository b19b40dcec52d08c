import { type FieldSpec, formField } from '../../../web/form-field.ts';
import { urls } from '../../../web/urls.ts';
import type { CardAct } from '../card-form/action-from-form.ts';
import type { ButtonView, CardPage, FoldView, FormView, PartView, PlatesView } from './card-view.types.ts';

export interface FormSpec {
  /** Which form of the page: its answers come back by it. */
  name: string;
  act: CardAct;
  /** The step, phase or card that the action belongs to. */
  place: string;
  hidden?: Readonly<Record<string, string>>;
  /** A photo comes with it. */
  takesFiles?: boolean;
  parts?: readonly PartView[];
  buttons: readonly ButtonView[];
}

/** A form of the card: every one posts to the same address and says what it asks for by `act`. */
export function cardForm(page: CardPage, { name, act, place, hidden = {}, takesFiles = false, parts = [], buttons }: FormSpec): FormView {
  const marks = { act, step: place, ...hidden };
  return {
    name,
    action: urls.cardActions(page.row.id),
    page: pageOf(page),
    hidden: Object.entries(marks).map(([key, value]) => ({ name: key, value })),
    parts: [...parts],
    takesFiles,
    buttons: [...buttons],
    errors: idErrors(page, name),
  };
}

/** The address of this very page, with its step, so that a refused form finds it again. */
export function pageOf({ row, step }: CardPage): string {
  return step ? urls.cardStep(row.id, step.key) : urls.card(row.id);
}

/** Ids differ from form to form; the summary links to them. */
export function idErrors(page: CardPage, form: string): FormView['errors'] {
  return page.formState(form).summary.map(({ field, message }) => ({ field: field === '' ? '' : `${form}-${field}`, message }));
}

export function fieldPart(page: CardPage, form: string, spec: FieldSpec): PartView {
  return { field: { ...formField(page.formState(form), spec), id: `${form}-${spec.name}` } };
}

export interface PlatesSpec extends Omit<PlatesView, 'options' | 'error'> {
  value?: string;
  options: readonly { value: string; label: string; note?: string }[];
}

export function platesView(page: CardPage, form: string, { options, value, ...spec }: PlatesSpec): PlatesView {
  const { values, errors } = page.formState(form);
  const chosen = values[spec.name] ?? value;
  const error = errors[spec.name];
  return {
    ...spec,
    ...(error === undefined ? {} : { error }),
    options: options.map((option, index) => ({
      ...option,
      // The summary of errors leads to the first of them.
      id: index === 0 ? `${form}-${spec.name}` : `${form}-${spec.name}-${option.value}`,
      checked: option.value === chosen,
    })),
  };
}

/** One box to tick. */
export function tickPart(page: CardPage, form: string, spec: { name: string; legend: string; label: string; note?: string }): PartView {
  const { name, legend, label, note } = spec;
  const option = { value: '1', label, ...(note === undefined ? {} : { note }) };
  return { plates: platesView(page, form, { legend, name, many: true, oneColumn: true, options: [option] }) };
}

/** A form behind its words: open by itself where it came back with an error. */
export function foldedForm(page: CardPage, summary: string, spec: FormSpec): FoldView {
  return { summary, isOpen: page.formState(spec.name).summary.length > 0, form: cardForm(page, spec) };
}
