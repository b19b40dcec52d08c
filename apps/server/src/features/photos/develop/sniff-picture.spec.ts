import { describe, expect, it } from '@jest/globals';
import { sniffPicture } from './sniff-picture.ts';

const bytes = (...parts: (string | number[])[]): Buffer =>
  Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part))));

// Signatures: JPEG SOI (ITU-T T.81), PNG specification 5.2, WebP container specification (read)
describe('what bytes begin with', () => {
  it.each([
    ['jpeg', bytes([0xff, 0xd8, 0xff, 0xe1], 'Exif')],
    ['png', bytes([0x89], 'PNG\r\n', [0x1a], '\n')],
    ['webp', bytes('RIFF', [1, 2, 3, 4], 'WEBPVP8 ')],
  ])('tells %s', (kind, start) => {
    expect(sniffPicture(start)).toEqual({ ok: true, kind });
  });

  it.each([
    ['an empty file', bytes('')],
    ['a web page or a drawing in text', bytes(' \n<!DOCTYPE html><script>alert(1)</script>')],
    ['a web page or a drawing in text', bytes([0xef, 0xbb, 0xbf], '<svg xmlns="http://www.w3.org/2000/svg">')],
    ['a GIF', bytes('GIF89a')],
    ['a PDF', bytes('%PDF-1.7')],
    ['a packed archive', bytes('PK', [3, 4])],
    ['a HEIC file, which only its own maker’s devices can show', bytes([0, 0, 0, 24], 'ftypheic')],
    ['a film', bytes([0, 0, 0, 24], 'ftypisom')],
    ['another kind of file', bytes('PNG')],
    ['another kind of file', bytes('RIFF', [1, 2, 3, 4], 'WAVE')],
  ])('names what is no picture: %s', (found, start) => {
    expect(sniffPicture(start)).toEqual({ ok: false, found });
  });
});
