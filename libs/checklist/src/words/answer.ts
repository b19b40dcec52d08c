/** May it be done? If not, why, in words a person in the bay understands. */
export type Answer = { readonly can: true } | { readonly can: false; readonly why: string };

export const YES: Answer = { can: true };

export function no(why: string): Answer {
  return { can: false, why };
}
