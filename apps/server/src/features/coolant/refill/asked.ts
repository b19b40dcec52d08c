import type { Problem } from '#libs/coolant';

/** A value that the form gives, or the field that must be filled or changed first; without a message it is merely empty. */
export type Asked<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly field: string; readonly message?: string; readonly problem?: Problem };
