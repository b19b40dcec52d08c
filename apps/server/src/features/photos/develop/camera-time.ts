/** When a camera says that it took the picture: its wall clock, and its offset from UTC where it knows one. */
export interface CameraTime {
  /** 2026-06-09 */
  readonly day: string;
  /** 09:24:00 */
  readonly time: string;
  /** +02:00 */
  readonly offset: string | null;
}

const EXIF_IFD = 0x8769;
const DATE_TIME_ORIGINAL = 0x9003;
const OFFSET_TIME_ORIGINAL = 0x9011;
const ASCII = 2;
/** Entries of one directory; a camera writes a few dozen. */
const MOST_ENTRIES = 500;

/**
 * The time of taking out of a picture's Exif data (Exif 2.32, tags 0x9003 and 0x9011; TIFF 6.0 directories). Everything else in it,
 * the place above all, is left where it is and thrown away with it.
 *
 * @param exif As it stands in the file, with or without its `Exif` mark
 * @returns null where there is no such time, or the data are damaged
 */
export function cameraTime(exif: Uint8Array): CameraTime | null {
  const tiff = startsWithExif(exif) ? exif.subarray(6) : exif;
  const reader = openTiff(tiff);
  if (!reader) return null;
  const inner = reader.entries(reader.long(4)).get(EXIF_IFD);
  if (inner === undefined) return null;
  const entries = reader.entries(reader.long(inner + 8));
  const taken = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)/.exec(reader.ascii(entries.get(DATE_TIME_ORIGINAL)));
  if (!taken) return null;
  const offset = /^[+-]\d\d:\d\d/.exec(reader.ascii(entries.get(OFFSET_TIME_ORIGINAL)));
  return { day: `${taken[1]}-${taken[2]}-${taken[3]}`, time: taken[4] ?? '', offset: offset?.[0] ?? null };
}

interface TiffReader {
  long: (at: number) => number;
  /** Where each entry of a directory stands, by its tag. */
  entries: (at: number) => ReadonlyMap<number, number>;
  ascii: (entry: number | undefined) => string;
}

function startsWithExif(bytes: Uint8Array): boolean {
  return bytes[0] === 0x45 && bytes[1] === 0x78 && bytes[2] === 0x69 && bytes[3] === 0x66;
}

function openTiff(bytes: Uint8Array): TiffReader | null {
  const isLittle = bytes[0] === 0x49 && bytes[1] === 0x49;
  const isBig = bytes[0] === 0x4d && bytes[1] === 0x4d;
  if (!isLittle && !isBig) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const fits = (at: number, length: number): boolean => at >= 0 && at + length <= bytes.length;
  const short = (at: number): number => (fits(at, 2) ? view.getUint16(at, isLittle) : 0);
  const long = (at: number): number => (fits(at, 4) ? view.getUint32(at, isLittle) : 0);
  const entries = (at: number): ReadonlyMap<number, number> => {
    const count = at >= 8 ? Math.min(short(at), MOST_ENTRIES) : 0;
    return new Map(Array.from({ length: count }, (_, index) => at + 2 + index * 12).map((entry) => [short(entry), entry]));
  };
  const ascii = (entry: number | undefined): string => {
    if (entry === undefined || short(entry + 2) !== ASCII) return '';
    const length = Math.min(long(entry + 4), 40);
    const at = length <= 4 ? entry + 8 : long(entry + 8);
    return fits(at, length) ? String.fromCharCode(...bytes.subarray(at, at + length)) : '';
  };
  return { long, entries, ascii };
}
