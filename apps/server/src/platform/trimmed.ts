import type { TransformFnParams } from 'class-transformer';

/** Spaces round what was typed mean nothing; control characters (but line breaks) have no place in a record. */
export function trimmed({ value }: TransformFnParams): unknown {
  return typeof value === 'string' ? [...value].filter(isWritable).join('').trim() : value;
}

function isWritable(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  return code >= 0x20 ? code !== 0x7f : character === '\n' || character === '\t';
}
