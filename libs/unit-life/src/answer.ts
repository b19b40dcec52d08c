/** May it be recorded? If not, why, in words. */
export type Answer = { readonly ok: true } | { readonly ok: false; readonly why: string };

export const YES: Answer = { ok: true };

export function no(why: string): Answer {
  return { ok: false, why };
}
