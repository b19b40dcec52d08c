/** Why a drawing was refused. */
export type ChartInputCode =
  /** A number is NaN or infinite. */
  | 'not-finite'
  /** A number is finite but can't be drawn, such as a jug of no size. */
  | 'out-of-range'
  /** The id prefix can't start an XML id. */
  | 'bad-id-prefix';

/** The data or options of a drawing can't be drawn; `field` says which, the message what to change. */
export class ChartInputError extends Error {
  override readonly name = 'ChartInputError';

  constructor(
    readonly code: ChartInputCode,
    readonly field: string,
    message: string,
  ) {
    super(message);
  }
}
