import type { Standing } from '../form/bench-field.ts';

/** What is known of a job's car, by field: it stands where nobody types anything else. */
export interface KnownFigures {
  readonly figures: Readonly<Record<string, Standing<number> | undefined>>;
  readonly choices: Readonly<Record<string, Standing<string> | undefined>>;
}

export const NOTHING_KNOWN: KnownFigures = { figures: {}, choices: {} };
