import { type DecimalString } from './decimal.ts';

/** One step of a banded rule: costs up to and including this one take this mark-up. The last band has no top. */
export interface MarkupBand {
  readonly upToCost: DecimalString | null;
  readonly percent: DecimalString;
}

/**
 * How a selling price comes from a cost. Which rule and which figures is the workshop's own decision; none is built in.
 * `percent`: on top of the cost. `margin`: share of the selling price that stays. `amount`: a fixed sum on top.
 * `bands`: a percentage by what the part costs; small parts usually carry more (common practice, no source).
 */
export type MarkupRule = (
  | { readonly kind: 'percent'; readonly percent: DecimalString }
  | { readonly kind: 'margin'; readonly percent: DecimalString }
  | { readonly kind: 'amount'; readonly amount: DecimalString }
  | { readonly kind: 'bands'; readonly bands: readonly MarkupBand[] }
) & {
  /** Selling price rounded to the nearest multiple of this, such as '0.05'; to the cent unless said. */
  readonly roundTo?: DecimalString;
};
