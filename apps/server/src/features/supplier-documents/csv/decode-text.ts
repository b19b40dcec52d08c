import type { Encoding } from './file-reading.types.ts';

/**
 * The encoding that a file of text seems to have: by its mark, else UTF-8 where every byte is, else that of older office programs.
 *
 * @example guessEncoding(Buffer.from('a;b')) // 'utf-8'
 */
export function guessEncoding(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** The text without its mark. */
export const decodeText = (bytes: Uint8Array, encoding: Encoding): string => new TextDecoder(encoding).decode(bytes);
