import { describe, expect, it } from '@jest/globals';
import { decodeLog } from './decode-log.ts';

const TEXT = 'Zeit;Kühlmittel (°C)\n0;20';

describe('the text of a log', () => {
  it.each([
    ['UTF-8', Buffer.from(TEXT)],
    ['UTF-8 with its mark', Buffer.from(`\uFEFF${TEXT}`)],
    ['Western European', Buffer.from(TEXT, 'latin1')],
    ['UTF-16, little end first', Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(TEXT, 'utf16le')])],
    ['UTF-16, big end first', Buffer.concat([Buffer.from([0xfe, 0xff]), Buffer.from(TEXT, 'utf16le').swap16()])],
  ])('is read from %s', (_, bytes) => {
    expect(decodeLog(bytes)).toBe(TEXT);
  });

  it('of what is no text keeps its null signs, by which it is refused', () => {
    expect(decodeLog(Buffer.from('89504e470d0a1a0a0000000d', 'hex'))).toContain('\u0000');
  });
});
