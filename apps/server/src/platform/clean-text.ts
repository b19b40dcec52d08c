/**
 * What can be written on paper: control characters (but line breaks and tabs) have no place in a record, and the database takes
 * neither a null sign nor half a surrogate pair, which becomes the replacement sign.
 *
 * @example cleanText('a\u0000b\ud800c') // 'ab\ufffdc'
 */
export function cleanText(text: string): string {
  return [...text.replaceAll(/\p{Surrogate}/gu, '\ufffd')].filter(isWritable).join('');
}

function isWritable(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  return code >= 0x20 ? code !== 0x7f : character === '\n' || character === '\t';
}
