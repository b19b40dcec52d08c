import { type Findings } from './findings.ts';

/** Valves that the engine computer opens, and the first of two, hold a lower level by design. */
export function mayHoldLower({ kind }: Pick<Findings, 'kind'>): boolean {
  return kind !== 'wax' && kind !== 'unknown';
}
