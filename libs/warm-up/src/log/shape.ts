/**
 * A short name for the form of a file (layout, separator, headers), the same for every file that the same logger writes: answers given
 * once can be kept under it. FNV-1a, 32 bit; holds nothing of the contents.
 */
export function shapeOf(layout: string, separator: string, headers: readonly string[]): string {
  const text = [layout, separator, ...headers.map((header) => header.trim().toLowerCase())].join('\u001f');
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    hash ^= text.charCodeAt(index);
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  return `${layout}-${headers.length}-${hash.toString(16).padStart(8, '0')}`;
}
