import { randomBytes } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { describe, expect, it } from '@jest/globals';
import sharp from 'sharp';
import { developPicture, MOST_SENT_BYTES } from './develop-picture.ts';

const EXIF = {
  IFD0: { Make: 'Invented Cameras', Model: 'Field 2', Artist: 'Jory' },
  IFD2: { DateTimeOriginal: '2026:06:09 09:24:00', OffsetTimeOriginal: '+02:00' },
  IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '53/1 20/1 30/1', GPSLongitudeRef: 'W', GPSLongitude: '6/1 15/1 0/1' },
};

const plainPicture = (width = 400, height = 300) => sharp({ create: { width, height, channels: 3, background: '#3a6' } });

/** A PNG that says it is this large; its lines are all zero, so that it packs to almost nothing. */
function hugePng(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const frame = Buffer.alloc(body.length + 8);
    frame.writeUInt32BE(data.length, 0);
    body.copy(frame, 4);
    frame.writeUInt32BE(crc(body), body.length + 4);
    return frame;
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([1, 0, 0, 0, 0], 8);
  const lines = deflateSync(Buffer.alloc(Math.ceil(width / 8) + 1));
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', lines),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function crc(bytes: Buffer): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}

const codeOf = async (sent: Buffer): Promise<unknown> =>
  developPicture(sent).then(
    () => 'taken',
    (error: { code?: unknown }) => error.code,
  );

describe('a picture that is kept', () => {
  it('loses place, camera and owner, and keeps the time of taking as a figure of its own', async () => {
    const sent = await plainPicture().withExif(EXIF).jpeg().toBuffer();
    expect((await sharp(sent).metadata()).exif?.includes('Invented Cameras')).toBe(true);
    const kept = await developPicture(sent);
    expect(kept.cameraTime).toEqual({ day: '2026-06-09', time: '09:24:00', offset: '+02:00' });
    const { exif, xmp, iptc, icc } = await sharp(kept.bytes).metadata();
    expect({ exif, xmp, iptc, icc }).toEqual({ exif: undefined, xmp: undefined, iptc: undefined, icc: undefined });
    expect(kept.bytes.includes('Invented') || kept.smallBytes.includes('Invented')).toBe(false);
  });

  it.each(['jpeg', 'png', 'webp'] as const)('becomes a JPEG of at most 2048 px from %s', async (format) => {
    const kept = await developPicture(await plainPicture(3000, 1500).toFormat(format).toBuffer());
    expect([kept.mediaType, kept.widthPx, kept.heightPx]).toEqual(['image/jpeg', 2048, 1024]);
    expect((await sharp(kept.bytes).metadata()).format).toBe('jpeg');
    expect((await sharp(kept.smallBytes).metadata()).width).toBe(320);
  });

  it('stands upright', async () => {
    const lying = await plainPicture(400, 300).withMetadata({ orientation: 6 }).jpeg().toBuffer();
    const kept = await developPicture(lying);
    expect([kept.widthPx, kept.heightPx]).toEqual([300, 400]);
  });

  it('is held to a size that a database is glad of, however noisy it is', async () => {
    const noise = await sharp(randomBytes(2400 * 1800 * 3), { raw: { width: 2400, height: 1800, channels: 3 } })
      .jpeg({ quality: 95 })
      .toBuffer();
    expect((await developPicture(noise)).bytes.length).toBeLessThanOrEqual(1_500_000);
  });
});

describe('a picture that is refused', () => {
  it('is none, whatever it is called', async () => {
    expect(await codeOf(Buffer.from('<!doctype html><script>alert(1)</script>'))).toBe('no-picture');
    await expect(developPicture(Buffer.from('<html></html>'))).rejects.toThrow('This is a web page');
  });

  it('has a page hidden behind the mark of a picture, and is kept without it', async () => {
    const sent = Buffer.concat([await plainPicture().jpeg().toBuffer(), Buffer.from('<script>alert(1)</script>')]);
    expect((await developPicture(sent)).bytes.includes('<script>')).toBe(false);
  });

  it('would unfold to gigabytes', async () => {
    const bomb = hugePng(60_000, 60_000);
    expect(bomb.length).toBeLessThan(10_000);
    expect(await codeOf(bomb)).toBe('too-many-pixels');
  });

  it('is broken off, or only begins like one', async () => {
    const whole = await plainPicture().jpeg().toBuffer();
    expect(await codeOf(whole.subarray(0, whole.length / 2))).toBe('broken-picture');
    expect(await codeOf(Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(500)]))).toBe('broken-picture');
  });

  it('has 30 MB', async () => {
    expect(await codeOf(Buffer.concat([await plainPicture().jpeg().toBuffer(), Buffer.alloc(30 * 1024 * 1024)]))).toBe('picture-too-large');
    expect(MOST_SENT_BYTES).toBeLessThan(30 * 1024 * 1024);
  });

  it('moves', async () => {
    const two = await sharp(randomBytes(2 * 10 * 10 * 3), { raw: { width: 10, height: 20, channels: 3, pageHeight: 10 } })
      .webp({ loop: 0 })
      .toBuffer();
    expect(await codeOf(two)).toBe('no-picture');
  });
});
