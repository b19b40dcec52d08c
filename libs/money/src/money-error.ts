/**
 * `not-a-decimal`: a text that should have been checked before is no plain decimal.
 * `bad-weights`: shares were asked for with no weight, a negative one, or all of them zero.
 * `finer-than-places`: an amount to be shared has more decimals than the shares may have.
 * `bad-markup-rule`: a mark-up rule that should have been checked before is impossible.
 */
export type MoneyErrorCode = 'not-a-decimal' | 'bad-weights' | 'finer-than-places' | 'bad-markup-rule';

/** A mistake of the calling code; what people type is answered with words instead. */
export class MoneyError extends Error {
  readonly code: MoneyErrorCode;

  constructor(code: MoneyErrorCode, message: string) {
    super(message);
    this.name = 'MoneyError';
    this.code = code;
  }
}
