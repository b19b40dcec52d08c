/** The database can't be used as things are; the message says what to change, and needs no stack. */
export class DatabaseStartError extends Error {
  override readonly name = 'DatabaseStartError';
}
