import { type Problem } from '../outcome.ts';

/**
 * Whether exactly one of several fields was given.
 *
 * @param given The fields with their values; undefined and null count as not given
 * @param field The field the message points at
 * @returns The problem, or undefined when exactly one is there
 * @example exactlyOne({ massPercent: 40, volumePercent: undefined }, 'target') // undefined
 */
export function exactlyOne(given: Readonly<Record<string, unknown>>, field: string): Problem | undefined {
  const names = Object.keys(given);
  const present = names.filter((name) => given[name] !== undefined && given[name] !== null);
  if (present.length === 1) return undefined;
  const list = names.join(', ');
  const found = present.length === 0 ? 'None was given.' : `Given were ${present.join(' and ')}.`;
  return { code: 'exactly-one-needed', kind: 'malformed', field, message: `Give exactly one of ${list}. ${found}` };
}
