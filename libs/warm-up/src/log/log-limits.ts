/** What is read at once: an hour at 10 readings a second, and the size a browser sends without trouble. */
export interface LogLimits {
  rows: number;
  characters: number;
}

export const LOG_LIMITS: LogLimits = { rows: 36_000, characters: 10_000_000 };
