import { type Sample } from '../types/sample.ts';
import { type DropAccount } from './dropped-rows.ts';
import { type Quantity } from './quantity.ts';
import { type Track } from './track.ts';

/** Other channels count for a coolant reading if they answered since the one before, or at most this long ago. */
const HOLD_S = 30;
const SENSOR_C = { low: -40, high: 215 };

const FIELDS: readonly {
  quantity: Exclude<Quantity, 'coolant'>;
  field: 'intakeC' | 'ambientC' | 'speedKmh' | 'rpm' | 'loadPercent' | 'airFlowGps';
}[] = [
  { quantity: 'intake', field: 'intakeC' },
  { quantity: 'ambient', field: 'ambientC' },
  { quantity: 'speed', field: 'speedKmh' },
  { quantity: 'rpm', field: 'rpm' },
  { quantity: 'load', field: 'loadPercent' },
  { quantity: 'airFlow', field: 'airFlowGps' },
];

/** One sample for each coolant reading, with the mean of what the other channels said since the reading before. Readings that share a time become one. */
export function mergeTracks(tracks: Partial<Record<Quantity, Track>>, lineOf: readonly number[], dropped: DropAccount): Sample[] {
  const { coolant } = tracks;
  if (!coolant) return [];
  const others = FIELDS.flatMap(({ quantity, field }) => {
    const track = tracks[quantity];
    return track ? [{ field, follow: follower(track) }] : [];
  });
  const samples: Sample[] = [];
  let startS = Number.NaN;
  let sharing = 1;
  for (let row = 0; row < coolant.values.length; row += 1) {
    const coolantC = coolant.values[row] ?? Number.NaN;
    if (Number.isNaN(coolantC)) continue;
    const atS = coolant.timesS[row] ?? 0;
    if (Number.isNaN(startS)) startS = atS;
    const timeS = Math.round((atS - startS) * 1e6) / 1e6;
    const last = samples[samples.length - 1];
    if (coolantC < SENSOR_C.low || coolantC > SENSOR_C.high) {
      dropped.add('outside what a coolant sensor can say (−40 to 215 °C)', lineOf[row] ?? 0);
    } else if (last && timeS < last.timeS) {
      dropped.add('time runs back', lineOf[row] ?? 0);
    } else if (last && timeS === last.timeS) {
      sharing += 1;
      last.coolantC += (coolantC - last.coolantC) / sharing;
      dropped.add('same time as the row before (averaged with it)', lineOf[row] ?? 0);
    } else {
      sharing = 1;
      const sample: Sample = { timeS, coolantC };
      for (const { field, follow } of others) {
        const value = follow(atS);
        if (!Number.isNaN(value)) sample[field] = value;
      }
      samples.push(sample);
    }
  }
  return samples;
}

/** Walks along a track: mean of the readings up to `atS` that were not told yet, else the last one while it is fresh. */
function follower({ timesS, values }: Track): (atS: number) => number {
  let next = 0;
  let last = Number.NaN;
  let lastS = Number.NEGATIVE_INFINITY;
  return (atS) => {
    let sum = 0;
    let count = 0;
    while (next < values.length) {
      const value = values[next] ?? Number.NaN;
      if (!Number.isNaN(value)) {
        if ((timesS[next] ?? 0) > atS) break;
        sum += value;
        count += 1;
        last = value;
        lastS = timesS[next] ?? 0;
      }
      next += 1;
    }
    if (count > 0) return sum / count;
    return atS - lastS <= HOLD_S ? last : Number.NaN;
  };
}
