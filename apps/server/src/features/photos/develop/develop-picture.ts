import { createHash } from 'node:crypto';
import sharp, { type OutputInfo } from 'sharp';
import { brokenPicture, noPicture, pictureTooLarge, tooManyPixels } from '../photos.errors.ts';
import { type CameraTime, cameraTime } from './camera-time.ts';
import { sniffPicture } from './sniff-picture.ts';

/** Of what is sent: a telephone's largest JPEG is about so big. */
export const MOST_SENT_BYTES = 12 * 1024 * 1024;
const MOST_PIXELS = 50_000_000;
const LONG_SIDE_PX = 2048;
const SMALL_SIDE_PX = 320;
const MOST_KEPT_BYTES = 1_500_000;
const QUALITIES = [82, 70, 55, 40] as const;
const TIMEOUT_S = 20;

// Every picture is another one: nothing is gained by keeping decoded ones in memory.
sharp.cache(false);

/** A picture as it is kept. */
export interface DevelopedPicture {
  readonly mediaType: 'image/jpeg';
  readonly bytes: Buffer;
  readonly smallBytes: Buffer;
  readonly widthPx: number;
  readonly heightPx: number;
  /** SHA-256 of what was sent. */
  readonly sentSha256: string;
  readonly cameraTime: CameraTime | null;
}

/**
 * Decodes a picture and encodes it anew: upright, at most 2048 px long, without anything that the camera wrote beside it (place, device,
 * owner) but the time of taking.
 *
 * @throws no-picture, broken-picture, too-many-pixels, picture-too-large
 */
export async function developPicture(sent: Buffer): Promise<DevelopedPicture> {
  if (sent.length > MOST_SENT_BYTES) throw pictureTooLarge(MOST_SENT_BYTES / 1024 / 1024);
  const sniffed = sniffPicture(sent);
  if (!sniffed.ok) throw noPicture(sniffed.found);
  const exif = await readHeader(sent, sniffed.kind);
  try {
    const { data, info } = await encode(sent);
    const smallBytes = await sharp(data)
      .resize({ width: SMALL_SIDE_PX, height: SMALL_SIDE_PX, fit: 'inside' })
      .jpeg({ quality: 70 })
      .toBuffer();
    return {
      mediaType: 'image/jpeg',
      bytes: data,
      smallBytes,
      widthPx: info.width,
      heightPx: info.height,
      sentSha256: createHash('sha256').update(sent).digest('hex'),
      cameraTime: exif ? cameraTime(exif) : null,
    };
  } catch {
    throw brokenPicture(); // the decoder's own words help nobody in a workshop
  }
}

/** Its size is looked at before anything is decoded: few bytes can unfold to gigabytes. */
async function readHeader(sent: Buffer, kind: string): Promise<Buffer | undefined> {
  const { width, height, format, pages, exif } = await sharp(sent, { limitInputPixels: false })
    .metadata()
    .catch(() => {
      throw brokenPicture();
    });
  if (format !== kind) throw brokenPicture();
  if ((pages ?? 1) > 1) throw noPicture('a moving picture');
  if (width * height > MOST_PIXELS) throw tooManyPixels(MOST_PIXELS / 1_000_000);
  return exif;
}

async function encode(sent: Buffer): Promise<{ data: Buffer; info: OutputInfo }> {
  const upright = await sharp(sent, { limitInputPixels: MOST_PIXELS, failOn: 'error' })
    .timeout({ seconds: TIMEOUT_S })
    .autoOrient()
    .resize({ width: LONG_SIDE_PX, height: LONG_SIDE_PX, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const { width, height, channels } = upright.info;
  let encoded: { data: Buffer; info: OutputInfo } | undefined;
  for (const quality of QUALITIES) {
    encoded = await sharp(upright.data, { raw: { width, height, channels } }).jpeg({ quality }).toBuffer({ resolveWithObject: true });
    if (encoded.data.length <= MOST_KEPT_BYTES) return encoded;
  }
  throw new Error('A picture of this size encodes to less than this');
}
