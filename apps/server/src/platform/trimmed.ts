import type { TransformFnParams } from 'class-transformer';
import { cleanText } from './clean-text.ts';

/** Spaces round what was typed mean nothing. */
export function trimmed({ value }: TransformFnParams): unknown {
  return typeof value === 'string' ? cleanText(value).trim() : value;
}
