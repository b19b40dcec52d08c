/** Something read from the free JSON of an action: understood, or refused with the reason. */
export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

export function understood<T>(value: T): Read<T> {
  return { ok: true, value };
}

export function refused(why: string): { readonly ok: false; readonly why: string } {
  return { ok: false, why };
}
