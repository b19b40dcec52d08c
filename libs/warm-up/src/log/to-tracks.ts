import { type Channel, type Layout } from './channel.ts';
import { type ReadClock } from './clock-times.ts';
import { dropCodes, dropFirstWrong } from './drop-codes.ts';
import { type DropAccount } from './dropped-rows.ts';
import { longestRun } from './longest-run.ts';
import { type Quantity } from './quantity.ts';
import { type Track } from './track.ts';
import { toBase } from './units.ts';

/** Puts the channels on their clocks in base units, leaves out other runs of the engine, codes and first wrong answers. */
export function toTracks(layout: Layout, clocks: readonly ReadClock[], dropped: DropAccount): Partial<Record<Quantity, Track>> {
  const tracks: Partial<Record<Quantity, Track>> = {};
  const shared = clocks[0];
  const run = layout.sharedRows && shared ? longestRun(shared.timesS) : null;
  for (const channel of layout.channels) {
    const clock = layout.sharedRows ? shared : clocks[channel.clock];
    if (!clock || channel.unit === null) continue;
    const values = channel.values.slice();
    const drop = (row: number, reason: string): void => dropped.add(reason, layout.lineOf[row] ?? 0);
    // Codes are the file's own figures, so they go before the units are changed.
    dropCodes(values, channel.quantity, drop);
    if (channel.quantity === 'intake') dropFirstWrong(values, layout.lineOf, dropped);
    keepRun(channel, { values, clock, run, drop });
    const { unit } = channel;
    tracks[channel.quantity] = { timesS: clock.timesS, values: values.map((value) => toBase(value, unit)) };
  }
  return tracks;
}

interface Kept {
  values: Float64Array;
  clock: ReadClock;
  run: { from: number; to: number } | null;
  drop: (row: number, reason: string) => void;
}

function keepRun({ quantity }: Channel, { values, clock, run, drop }: Kept): void {
  const counts = quantity === 'coolant';
  for (let row = 0; row < values.length; row += 1) {
    if (Number.isNaN(values[row] ?? Number.NaN)) continue;
    const timeless = Number.isNaN(clock.timesS[row] ?? Number.NaN);
    if (!timeless && (!run || (row >= run.from && row < run.to))) continue;
    values[row] = Number.NaN;
    if (counts) drop(row, timeless ? 'no readable time' : 'another run of the engine: the time starts again');
  }
}
