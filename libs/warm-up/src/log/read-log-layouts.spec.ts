import { describe, expect, it } from '@jest/globals';
import { columnOf, lines, read } from '../../testing/read-or-throw.ts';
import { clockText, warmUpRows } from '../../testing/warm-up-rows.ts';

const ROWS = warmUpRows(900);

describe('one reading per row', () => {
  it('reads name, value and unit, holds other channels, and drops places named among them', () => {
    const text = lines(
      '"SECONDS";"PID";"VALUE";"UNITS";"LATITUDE";"LONGTITUDE";',
      ROWS.flatMap(({ timeS, coolantC, speedKmh }) => [
        `"${(86_000 + timeS) % 86_400}.5";"Vehicle speed";"${speedKmh}";"km/h";"52.51";"13.37";`,
        `"${(86_000 + timeS) % 86_400}.7";"Engine coolant temperature";"${coolantC}";"℃";"52.51";"13.37";`,
        `"${(86_000 + timeS) % 86_400}.8";"Altitude (GPS)";"40";"m";"52.51";"13.37";`,
      ]),
    );
    const log = read(text);
    expect(log.understood.layout).toBe('long');
    expect(log.samples[899]).toEqual({ timeS: 899, coolantC: 88, speedKmh: 50 });
    expect(columnOf(log, 'coolant')).toMatchObject({ unit: '°C', unitFrom: 'unit column' });
    expect(log.understood.locationColumnsDropped).toEqual(['LATITUDE', 'LONGTITUDE', 'Altitude (GPS)']);
  });

  it.each([
    ['numbers with the service in front', '105', '10D', '10C'],
    ['numbers with a zero', '0105', '010D', '010C'],
    ['hexadecimal numbers', '0x05', '0x0D', '0x0C'],
  ])('reads channels by %s, with the units of the standard', (_, coolant, speed, rpm) => {
    const log = read(
      lines(
        'ms,PID,value',
        ROWS.flatMap(({ timeS, coolantC, speedKmh }) => [
          `${timeS * 1000},${speed},${speedKmh}`,
          `${timeS * 1000 + 200},${coolant},${coolantC}`,
          `${timeS * 1000 + 300},${rpm},1726`,
        ]),
      ),
    );
    expect(log.samples[899]).toEqual({ timeS: 899, coolantC: 88, speedKmh: 50, rpm: 1726 });
    expect(columnOf(log, 'coolant')).toMatchObject({ unit: '°C', unitFrom: 'PID standard' });
  });

  it('decodes bytes', () => {
    const hex = (value: number): string => value.toString(16).padStart(2, '0');
    const { samples } = read(
      lines(
        'ms,PID,value',
        ROWS.flatMap(({ timeS, coolantC, speedKmh }) => [
          `${timeS * 1000},10D,${hex(speedKmh)}`,
          `${timeS * 1000 + 200},105,${hex(coolantC + 40)}`,
        ]),
      ),
    );
    expect(samples[899]).toEqual({ timeS: 899, coolantC: 88, speedKmh: 50 });
  });

  it('reads label and unit beside a number', () => {
    const text = lines(
      'Timestamp,PID,Label,Value,Unit',
      ROWS.map(({ timeS, coolantC }) => `2023-05-01T${clockText(25_200 + timeS)}Z,0105,Coolant temperature,${coolantC * 1.8 + 32},degF`),
    );
    expect(read(text).samples[899]?.coolantC).toBeCloseTo(88, 9);
  });
});

describe('pairs of time and value', () => {
  it('gives every channel its own clock', () => {
    const text = lines(
      '"Time";"0D - Vehicle Speed";"Time";"05 - Engine Coolant Temperature"',
      '"s";"km/h";"s";"°C"',
      ROWS.map(({ timeS, coolantC, speedKmh }) => `"${timeS},1";"${speedKmh}";"${timeS},6";"${coolantC}"`),
    );
    const log = read(text);
    expect(log.understood).toMatchObject({ layout: 'paired', decimalMark: ',' });
    expect(log.samples[899]).toEqual({ timeS: 899, coolantC: 88, speedKmh: 50 });
  });
});
