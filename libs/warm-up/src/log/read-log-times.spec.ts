import { describe, expect, it } from '@jest/globals';
import { lines, read, refused } from '../../testing/read-or-throw.ts';
import { clockText, warmUpRows } from '../../testing/warm-up-rows.ts';

const ROWS = warmUpRows(900);

describe('times', () => {
  const withTimes = (header: string, time: (timeS: number) => string): string =>
    lines(
      `${header};coolant_c`,
      ROWS.map(({ timeS, coolantC }) => `${time(timeS)};${coolantC}`),
    );

  it.each([
    ['plain seconds without a unit', 'Time', (timeS: number) => `${timeS}`],
    ['milliseconds in the header', 'Time (ms)', (timeS: number) => `${timeS * 1000}`],
    ['milliseconds since 1970', 'timestamp', (timeS: number) => `${1_499_843_039_524 + timeS * 1000}`],
    ['minutes', 'Time (min)', (timeS: number) => `${timeS / 60}`],
    ['a date and time of day', 'Device Time', (timeS: number) => `12-Jul-2017 ${clockText(36_000 + timeS)}.000`],
    ['a sentence of a date', 'GPS Time', (timeS: number) => `Sat Oct 21 ${clockText(36_000 + timeS)} EDT 2023`],
    ['an ISO date', 'time', (timeS: number) => `2017-07-12T${clockText(36_000 + timeS)}.000+02:00`],
    ['hours lost by a spreadsheet', 'Time', (timeS: number) => `${clockText(3600 + 2400 + timeS).slice(3)}.0`],
    [
      'twelve-hour clock',
      'Time',
      (timeS: number) => `${timeS < 600 ? 11 : 12}:${clockText(3000 + timeS).slice(3)} ${timeS < 600 ? 'AM' : 'PM'}`,
    ],
    ['a spreadsheet’s share of a day', 'Time', (timeS: number) => `${((36_000 + timeS) / 86_400).toFixed(9)}`],
  ])('%s', (_, header, time) => {
    const { samples } = read(withTimes(header, time));
    expect(samples).toHaveLength(900);
    expect(samples[899]?.timeS).toBeCloseTo(899, 2);
  });

  it('takes a time that no clock shows for none', () => {
    const { samples } = read(withTimes('time_s', (timeS) => (timeS === 0 ? '-1.797693134862316e302' : `${timeS}`)));
    expect(samples).toHaveLength(899);
    expect(samples[0]?.timeS).toBe(0);
  });

  it('reads microseconds without their leading zeros when only that keeps the time rising', () => {
    const micros = (timeS: number): number => (timeS * 66_512) % 1_000_000;
    const { samples, understood } = read(
      withTimes(
        'Time',
        (timeS) =>
          `9:${clockText(1800 + Math.floor(timeS / 2)).slice(3)}.${timeS % 2 ? 900_000 + (micros(timeS) % 99_999) : micros(timeS) % 99_999}`,
      ),
    );
    expect(understood.notes.join()).toMatch(/without leading zeros/);
    expect(samples).toHaveLength(900);
    expect(samples[1]?.timeS).toBeCloseTo(0.966512, 6);
  });

  it('asks when a short list of times could be seconds or minutes', () => {
    const text = lines(
      'Time;coolant_c',
      Array.from({ length: 91 }, (_, row) => `${row};${20 + row / 2}`),
    );
    expect(refused(text).asks[0]).toMatchObject({ field: 'units.time' });
    expect(read(text, { units: { time: 'min' } }).samples[90]?.timeS).toBe(5400);
  });

  it('asks for the seconds between rows when no column can tell the time', () => {
    const text = withTimes('TIME', () => '1,51336E+12');
    expect(refused(text).asks.map(({ field }) => field)).toEqual(['columns.time', 'rowIntervalS']);
    expect(read(text, { rowIntervalS: 0.5 }).samples[899]?.timeS).toBe(449.5);
  });

  it('does not take hours and minutes for minutes and seconds', () => {
    expect(refused(withTimes('Time', (timeS) => clockText(25_200 + timeS).slice(0, 5))).asks[0]?.question).toMatch(/hours and minutes/);
  });
});
