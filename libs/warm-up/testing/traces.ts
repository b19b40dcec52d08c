import { type Sample } from '../src/types/sample.ts';

const FIELDS: Readonly<Record<string, keyof Sample>> = {
  time_s: 'timeS',
  coolant_c: 'coolantC',
  speed_kmh: 'speedKmh',
  rpm: 'rpm',
  load_pct: 'loadPercent',
  intake_c: 'intakeC',
  ambient_c: 'ambientC',
  maf_gps: 'airFlowGps',
};

/** The stored test logs as samples, read without the importer that is under test elsewhere. */
export function samplesOf(csv: string): Sample[] {
  const [header = '', ...lines] = csv.trim().split(/\r?\n/);
  const fields = header.split(',').map((name) => FIELDS[name]);
  return lines.flatMap((line) => {
    const sample: Partial<Sample> = {};
    line.split(',').forEach((cell, index) => {
      const field = fields[index];
      if (field && cell !== '') sample[field] = Number(cell);
    });
    const { timeS, coolantC } = sample;
    return timeS === undefined || coolantC === undefined ? [] : [{ ...sample, timeS, coolantC }];
  });
}

/** The rows of a small table by the names of its columns. */
export function tableOf(csv: string): Record<string, string>[] {
  const [header = '', ...lines] = csv.trim().split(/\r?\n/);
  const names = header.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, index) => [names[index] ?? '', cell])));
}
