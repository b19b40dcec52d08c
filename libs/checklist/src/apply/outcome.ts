import { type CardState, type DifferenceCode } from '../card/card-state.ts';

export interface Misfit {
  readonly code: DifferenceCode;
  readonly why: string;
}

/** What an action did: a changed card, a misfit for a person to look at, or both (it was done, and somebody should look). */
export type Outcome = { readonly card: CardState; readonly misfit?: Misfit } | { readonly card?: never; readonly misfit: Misfit };

export function misfit(code: DifferenceCode, why: string): Outcome {
  return { misfit: { code, why } };
}
