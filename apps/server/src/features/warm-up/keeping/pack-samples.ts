import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import type { Sample } from '#libs/warm-up';

const COLUMNS = ['timeS', 'coolantC', 'speedKmh', 'rpm', 'loadPercent', 'intakeC', 'ambientC', 'airFlowGps'] as const;
const zip = promisify(gzip);
const unzip = promisify(gunzip);

/** Samples as they are kept: one column after another as doubles, so that nothing is rounded and repeats pack well. */
export async function packSamples(samples: readonly Sample[]): Promise<Uint8Array<ArrayBuffer>> {
  const values = new Float64Array(samples.length * COLUMNS.length);
  COLUMNS.forEach((name, column) => {
    samples.forEach((sample, row) => (values[column * samples.length + row] = sample[name] ?? Number.NaN));
  });
  return Uint8Array.from(await zip(Buffer.from(values.buffer)));
}

/** @returns exactly the samples that were packed */
export async function unpackSamples(packed: Uint8Array): Promise<Sample[]> {
  const bytes = await unzip(packed);
  // Copied: doubles must begin at a multiple of eight bytes.
  const values = new Float64Array(Uint8Array.from(bytes).buffer);
  const rows = values.length / COLUMNS.length;
  return Array.from({ length: rows }, (_, row) => {
    const sample: Sample = { timeS: values[row] ?? 0, coolantC: values[rows + row] ?? 0 };
    for (const [column, name] of COLUMNS.entries()) {
      const value = values[column * rows + row] ?? Number.NaN;
      if (!Number.isNaN(value)) sample[name] = value;
    }
    return sample;
  });
}
