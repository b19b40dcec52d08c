import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';

/** One piece of a variant kept on the shelf, in one currency. */
export interface ShelfPiece {
  readonly purchasePrice: number;
  readonly salePrice: number;
  /** What comes back for one that isn't sold in time. */
  readonly refund: number;
}

/**
 * How sure a sale must be before one more piece is kept on the shelf: keep it while the probability of *not* selling it is
 * below this ratio, cu / (cu + co), with cu the margin missed when it is wanting and co the loss when it stays.
 *
 * Source: the newsvendor model; Arrow, Harris and Marschak 1951 (from memory), worked figures read.
 *
 * @throws FitmentInputError `malformed` for bad figures, `impossible` unless refund < purchase price < sale price
 * @example criticalRatio({ purchasePrice: 7.5, salePrice: 10, refund: 2.5 }) // 0.3333333333333333
 */
export function criticalRatio({ purchasePrice, salePrice, refund }: ShelfPiece): number {
  refuseProblems('malformed', [
    ...numberProblems(purchasePrice, { field: 'purchasePrice', words: 'The purchase price', min: 0 }),
    ...numberProblems(salePrice, { field: 'salePrice', words: 'The sale price', min: 0 }),
    ...numberProblems(refund, { field: 'refund', words: 'The refund', min: 0 }),
  ]);
  refuseProblems('impossible', [
    ...(refund < purchasePrice
      ? []
      : [
          {
            field: 'refund',
            message: 'The refund is not below the purchase price, so keeping one costs nothing: give the refund after all deductions.',
          },
        ]),
    ...(purchasePrice < salePrice
      ? []
      : [{ field: 'salePrice', message: 'The sale price is not above the purchase price, so none is worth keeping: check both.' }]),
  ]);
  return (salePrice - purchasePrice) / (salePrice - refund);
}
