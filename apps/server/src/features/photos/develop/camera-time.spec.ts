import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { cameraTime } from './camera-time.ts';

/** A big-endian TIFF with an Exif directory of these ASCII entries, laid out by hand after TIFF 6.0 and Exif 2.32. */
function tiff(entries: readonly (readonly [tag: number, text: string])[]): Buffer {
  const bytes = Buffer.alloc(400);
  bytes.write('MM', 0, 'latin1');
  bytes.writeUInt16BE(42, 2);
  bytes.writeUInt32BE(8, 4);
  bytes.writeUInt16BE(1, 8);
  entry(bytes, 10, { tag: 0x8769, type: 4, count: 1, value: 30 });
  bytes.writeUInt16BE(entries.length, 30);
  entries.forEach(([tag, text], index) => {
    const at = 200 + index * 60;
    entry(bytes, 32 + index * 12, { tag, type: 2, count: text.length + 1, value: at });
    bytes.write(`${text}\0`, at, 'latin1');
  });
  return bytes;
}

function entry(bytes: Buffer, at: number, { tag, type, count, value }: { tag: number; type: number; count: number; value: number }): void {
  bytes.writeUInt16BE(tag, at);
  bytes.writeUInt16BE(type, at + 2);
  bytes.writeUInt32BE(count, at + 4);
  bytes.writeUInt32BE(value, at + 8);
}

describe('the camera’s time', () => {
  it('is read with its offset, and without one', () => {
    expect(
      cameraTime(
        tiff([
          [0x9003, '2026:06:09 09:24:07'],
          [0x9011, '+02:00'],
        ]),
      ),
    ).toEqual({ day: '2026-06-09', time: '09:24:07', offset: '+02:00' });
    expect(cameraTime(Buffer.concat([Buffer.from('Exif\0\0'), tiff([[0x9003, '2026:06:09 09:24:07']])]))?.offset).toBeNull();
  });

  it('is not there where it is blank, cut off or no Exif at all', () => {
    expect(cameraTime(tiff([[0x9003, '    :  :     :  :  ']]))).toBeNull();
    expect(cameraTime(tiff([]))).toBeNull();
    expect(cameraTime(tiff([[0x9003, '2026:06:09 09:24:07']]).subarray(0, 205))).toBeNull();
    expect(cameraTime(Buffer.alloc(0))).toBeNull();
  });

  it('never fails on damaged data', () => {
    const whole = tiff([[0x9003, '2026:06:09 09:24:07']]);
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(399), fc.nat(255)), { maxLength: 30 }), (changes) => {
        const damaged = Buffer.from(whole);
        for (const [at, value] of changes) damaged[at] = value;
        expect(() => cameraTime(damaged)).not.toThrow();
      }),
    );
  });
});
