/** The largest log that is taken: an hour at ten readings a second, with many columns. */
export const LOG_BYTES = 10 * 1024 * 1024;
