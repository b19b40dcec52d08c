import { type Range } from '../template/evidence.ts';
import { type Read, refused, understood } from './read.ts';

const LONGEST_TEXT = 4000;

/** The fields of a JSON object; empty for anything else, so that every field is simply missing. */
export function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return {};
  return value as Readonly<Record<string, unknown>>;
}

export function numberIn(value: unknown, range: Range, what: string): Read<number> {
  if (typeof value !== 'number' || !Number.isFinite(value)) return refused(`${what} needs a figure.`);
  if (value < range.low || value > range.high) {
    return refused(`${what}: ${value} can't be right, it lies outside ${range.low} to ${range.high}. ${range.words}`);
  }
  return understood(value);
}

/** A whole number from `low` up. */
export function countIn(value: unknown, low: number, what: string): Read<number> {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < low || value > 9999) {
    return refused(`${what} needs a whole number from ${low} up.`);
  }
  return understood(value);
}

export function textIn(value: unknown, what: string): Read<string> {
  if (typeof value !== 'string' || value.trim() === '') return refused(`${what} is missing.`);
  if (value.length > LONGEST_TEXT) return refused(`${what} is longer than ${LONGEST_TEXT} letters: shorten it.`);
  return understood(value.trim());
}

/** Text that may be left out. */
export function textOrNull(value: unknown): string | null {
  return typeof value === 'string' && value.trim() !== '' ? value.trim().slice(0, LONGEST_TEXT) : null;
}

export function oneOf<T extends string>(value: unknown, choices: readonly T[], what: string): Read<T> {
  const found = choices.find((choice) => choice === value);
  return found === undefined ? refused(`${what}: choose one of ${choices.join(', ')}.`) : understood(found);
}
