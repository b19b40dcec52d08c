/**
 * The text of a log in whichever character set its logger wrote: UTF-8, UTF-16 with its mark, else the Western European one of
 * older programs, in which the degree sign is no UTF-8. What is no text at all stays recognisable as such by its null signs.
 *
 * @example decodeLog(Buffer.from([0x31, 0xb0, 0x43])) // '1°C'
 */
export function decodeLog(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
