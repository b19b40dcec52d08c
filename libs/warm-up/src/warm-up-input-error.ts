/** The call can't be answered because of what was given; `field` names it, the message says what to change. */
export class WarmUpInputError extends Error {
  readonly code = 'warm-up-input';
  readonly field: string;

  constructor(field: string, message: string) {
    super(message);
    this.name = 'WarmUpInputError';
    this.field = field;
  }
}
