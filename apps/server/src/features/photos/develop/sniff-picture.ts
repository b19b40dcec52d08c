export type PictureKind = 'jpeg' | 'png' | 'webp';

const KINDS: readonly (readonly [kind: PictureKind, isIt: (bytes: Uint8Array) => boolean])[] = [
  ['jpeg', (bytes) => starts(bytes, [0xff, 0xd8, 0xff])],
  ['png', (bytes) => starts(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])],
  ['webp', (bytes) => text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP'],
];

const OTHERS: readonly (readonly [words: string, isIt: (bytes: Uint8Array) => boolean])[] = [
  [
    'a HEIC file, which only its own maker’s devices can show',
    (bytes) => text(bytes, 4, 8) === 'ftyp' && /hei[cfsx]|hev|mif1/.test(text(bytes, 8, 12)),
  ],
  ['a film', (bytes) => text(bytes, 4, 8) === 'ftyp'],
  ['a GIF', (bytes) => text(bytes, 0, 4) === 'GIF8'],
  ['a PDF', (bytes) => text(bytes, 0, 4) === '%PDF'],
  ['a packed archive', (bytes) => starts(bytes, [0x50, 0x4b, 0x03, 0x04])],
  [
    'a web page or a drawing in text',
    (bytes) => /^\s*<(!doctype|html|head|body|script|svg|\?xml|!--)/i.test(text(bytes, 0, 200).replace(/^\u00ef\u00bb\u00bf/, '')),
  ],
];

/**
 * What the bytes are, by what they begin with: names and declared types say nothing.
 *
 * @returns The kind of picture, or what else it is, in words
 * @example sniffPicture(Buffer.from('<html>')) // { ok: false, found: 'a web page or a drawing in text' }
 */
export function sniffPicture(bytes: Uint8Array): { ok: true; kind: PictureKind } | { ok: false; found: string } {
  const kind = KINDS.find(([, isIt]) => isIt(bytes))?.[0];
  if (kind) return { ok: true, kind };
  if (bytes.length === 0) return { ok: false, found: 'an empty file' };
  return { ok: false, found: OTHERS.find(([, isIt]) => isIt(bytes))?.[0] ?? 'another kind of file' };
}

function starts(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, index) => bytes[index] === byte);
}

/** Byte by byte, so that a signature is told whatever the encoding. */
function text(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to));
}
