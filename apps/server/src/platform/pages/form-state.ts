import { cleanText } from '../clean-text.ts';
import type { FieldError } from '../domain-error.ts';

/** What a form says back after a refusal: what was typed, and what to change beside which field. */
export interface FormState {
  values: Readonly<Record<string, string>>;
  errors: Readonly<Record<string, string>>;
  /** The same, in order, for the summary above the form. */
  summary: readonly FieldError[];
  /** Where it was sent: of several forms of this name, the one with this action. */
  action?: string;
}

export const EMPTY_FORM: FormState = { values: {}, errors: {}, summary: [] };

/** Kept in the session between the POST and the page that follows it. */
export interface Flash {
  page: string;
  form?: string;
  action?: string;
  notice?: string;
  errors?: readonly FieldError[];
  values?: Readonly<Record<string, string>>;
}

export function formState(flash: Flash | undefined, form: string): FormState {
  if (!flash?.errors || (flash.form ?? '') !== form) return EMPTY_FORM;
  const errors: Record<string, string> = {};
  for (const { field, message } of flash.errors) errors[field] ??= message;
  return { values: flash.values ?? {}, errors, summary: flash.errors, ...(flash.action === undefined ? {} : { action: flash.action }) };
}

/** Of several forms of one name, a row each: what this one's field was refused for. */
export const rowError = (form: FormState, { action, field }: { action: string; field: string }): string | undefined =>
  form.action === action ? form.errors[field] : undefined;

const SECRET_FIELDS = /^(secret|pin|password|newSecret|oldSecret)/i;

/** A body as flat text values; secrets are never kept. */
export function typedValues(body: unknown): Record<string, string> {
  if (typeof body !== 'object' || body === null) return {};
  const values: Record<string, string> = {};
  for (const [typedName, value] of Object.entries(body)) {
    const name = cleanText(typedName);
    if (SECRET_FIELDS.test(name)) continue;
    if (typeof value === 'string') values[name] = cleanText(value.slice(0, 5_000));
    else if (Array.isArray(value))
      value.forEach((inner, index) => typeof inner === 'string' && (values[`${name}.${index}`] = cleanText(inner.slice(0, 500))));
  }
  return values;
}

/** A body as it is told apart from another: a plain hash of a secret has no place in the database. */
export function withoutSecrets(body: unknown): unknown {
  if (typeof body !== 'object' || body === null) return body ?? null;
  return Array.isArray(body) ? body : Object.fromEntries(Object.entries(body).filter(([name]) => !SECRET_FIELDS.test(name)));
}
