import type { TransformFnParams } from 'class-transformer';
import { cleanText } from '../../../platform/clean-text.ts';

/** A field that a form may send once, several times or not at all, as a list of trimmed texts. */
export function typedList({ value }: TransformFnParams): unknown {
  const list: unknown[] = Array.isArray(value) ? value : value === undefined ? [] : [value];
  return list.map((item) => (typeof item === 'string' ? cleanText(item).trim() : item));
}
