/** What went wrong, as far as HTTP must know. The filter turns it into a status. */
export type ErrorKind =
  | 'malformed' // the request can't be read as what it claims to be
  | 'not-signed-in'
  | 'forbidden'
  | 'not-found'
  | 'conflict' // true, but something else is there already
  | 'stale' // somebody changed it in between
  | 'impossible' // well-formed, and can't be: with the figures that would make it possible
  | 'too-large'
  | 'too-often'
  | 'unavailable';

export interface FieldError {
  field: string;
  message: string;
}

export interface ErrorDetails {
  errors?: readonly FieldError[];
  /** Further members of the problem document, such as `requiredDrainL`. */
  extra?: Readonly<Record<string, unknown>>;
}

/** An expected refusal. `code` is stable and names the case; the message says to a person what to change. */
export class DomainError extends Error {
  constructor(
    readonly kind: ErrorKind,
    readonly code: string,
    message: string,
    readonly details: ErrorDetails = {},
  ) {
    super(message);
  }
}
