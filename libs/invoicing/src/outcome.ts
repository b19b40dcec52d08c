/** One thing wrong with what was entered: which field, and in words what to change. */
export interface FieldError {
  readonly field: string;
  readonly message: string;
}

/** An answer, or the list of what has to be changed first. User input never throws. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly errors: readonly FieldError[] };

export function done<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

export function refused(errors: readonly FieldError[]): { readonly ok: false; readonly errors: readonly FieldError[] } {
  return { ok: false, errors };
}
