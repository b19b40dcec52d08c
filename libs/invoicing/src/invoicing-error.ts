/**
 * `not-issued`: a structured form was asked for a document without number, date or buyer.
 * `not-a-credit-note`: an earlier document handed in does not correct the original.
 */
export type InvoicingErrorCode = 'not-issued' | 'not-a-credit-note';

/** A mistake of the calling code; what people enter is answered with a list of field errors instead. */
export class InvoicingError extends Error {
  readonly code: InvoicingErrorCode;

  constructor(code: InvoicingErrorCode, message: string) {
    super(message);
    this.name = 'InvoicingError';
    this.code = code;
  }
}
