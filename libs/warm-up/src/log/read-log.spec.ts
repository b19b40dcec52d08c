import { describe, expect, it } from '@jest/globals';
import { columnOf, lines, read, refused } from '../../testing/read-or-throw.ts';
import { clockText, warmUpRows } from '../../testing/warm-up-rows.ts';

const ROWS = warmUpRows(900);

describe('wide logs', () => {
  it('reads the plain form, with byte order mark and Windows line ends', () => {
    const { samples, understood } = read(
      '\uFEFF' +
        ['time_s,coolant_c,speed_kmh', ...ROWS.map(({ timeS, coolantC, speedKmh }) => `${timeS},${coolantC},${speedKmh}`)].join('\r\n'),
    );
    expect(samples).toEqual(ROWS.map(({ timeS, coolantC, speedKmh }) => ({ timeS, coolantC, speedKmh })));
    expect(understood).toMatchObject({
      layout: 'wide',
      separator: ',',
      decimalMark: '.',
      headerLine: 1,
      rows: 900,
      samples: 900,
      durationS: 899,
      ratePerS: 1,
      gaps: [],
    });
    expect(columnOf({ understood }, 'coolant')).toMatchObject({ unit: '°C', unitFrom: 'header' });
  });

  it('takes clock times without a date through midnight, and blank cells until a channel answers', () => {
    const text = lines(
      'Time,Engine Coolant Temperature [°C],Vehicle Speed Sensor [km/h],Intake Air Temperature [°C]',
      ROWS.map(
        ({ timeS, coolantC, speedKmh }) =>
          `${clockText(86_100 + timeS)}.524,${timeS < 3 ? '' : coolantC},${timeS % 2 ? speedKmh : ''},${timeS < 4 ? '' : timeS === 4 ? 100 : 22}`,
      ),
    );
    const { samples, understood } = read(text);
    expect(samples).toHaveLength(897);
    expect(samples[896]).toEqual({ timeS: 896, coolantC: 88, intakeC: 22, speedKmh: 50 });
    expect(understood.notes.join()).toMatch(/passes midnight/);
    expect(understood.dropped).toEqual([{ reason: 'intake: first value 100 is far from the next ones', count: 1, lines: [6] }]);
    expect(samples.some(({ intakeC }) => intakeC === 100)).toBe(false);
  });

  it('takes units behind each value, decimal commas, a broken run time, and turns away from times a spreadsheet has rounded', () => {
    const text = lines(
      'TIME;ENGINE_RUNTIME;ENGINE_COOLANT_TEMP;SPEED;ENGINE_LOAD;ENGINE_RPM',
      ROWS.map(
        ({ timeS, coolantC, speedKmh }) =>
          `1,51336E+12;${timeS === 100 ? '1:6032000007E804' : clockText(timeS)};${coolantC}C;${speedKmh}km/h;74,50%;2124RPM`,
      ),
    );
    const log = read(text);
    expect(log.samples[200]).toEqual({ timeS: 201, coolantC: 40, speedKmh: 50, loadPercent: 74.5, rpm: 2124 });
    expect(columnOf(log, 'coolant')).toMatchObject({ unit: '°C', unitFrom: 'beside each value' });
    expect(log.understood.decimalMark).toBe(',');
    expect(log.understood.dropped).toEqual([{ reason: 'no readable time', count: 1, lines: [102] }]);
    expect(log.understood.notes.join()).toMatch(/TIME.*equal/);
  });

  it('asks for the unit of a header with empty brackets, reads it when told, and averages rows under one tick of the clock', () => {
    const text = lines(
      'ENGINE_RUN_TINE (),ENGINE_RPM (),VEHICLE_SPEED (),COOLANT_TEMPERATURE ()',
      ROWS.map(
        ({ timeS, coolantC, speedKmh }) => `${Math.floor(timeS / 4) * 2}.000000, 900.000000, ${speedKmh}.000000, ${coolantC}.000000,`,
      ),
    );
    const { problem, asks, understood, shape } = refused(text);
    expect(problem).toMatch(/unit/);
    expect(asks[0]).toMatchObject({ field: 'units.coolant', options: ['°C', '°F', 'K'], suggestion: { answer: '°C' } });
    expect(asks.map(({ field }) => field)).toContain('units.speed');
    expect(understood.columns.map(({ quantity }) => quantity)).toEqual(['coolant', 'speed', 'rpm']);
    const log = read(text, { units: { coolant: '°C' } });
    expect(log.shape).toBe(shape);
    expect(log.samples).toHaveLength(225);
    expect(log.samples[0]).not.toHaveProperty('speedKmh');
    expect(log.understood.open.map(({ field }) => field)).toEqual(['units.speed']);
    expect(read(text, { units: { coolant: '°C', speed: 'mph' } }).samples[224]?.speedKmh).toBeCloseTo(80.4672, 4);
  });

  it('never takes a 190 degree plateau for °F by itself', () => {
    const text = lines(
      'time_s,Coolant Temp',
      ROWS.map(({ timeS, coolantC }) => `${timeS},${coolantC * 1.8 + 32}`),
    );
    expect(refused(text).asks[0]?.suggestion).toMatchObject({ answer: '°F' });
    expect(read(text, { units: { coolant: '°F' } }).samples[899]?.coolantC).toBeCloseTo(88, 9);
  });

  it.each([
    ['Engine coolant temperature (℉)', '°F'],
    ['Engine coolant temperature (F)', '°F'],
    ['Engine Coolant Temperature(°F)', '°F'],
    ['Engine coolant temperature (℃)', '°C'],
    ['Engine coolant temperature (A) (℃)', '°C'],
    ['ECT(°C)', '°C'],
    ['coolant_temp_c', '°C'],
    ['coolantC', '°C'],
    ['Engine Coolant Temperature [Â°C]', '°C'],
    ['Kühlmitteltemperatur (°C)', '°C'],
  ])('reads the unit in %s', (header, unit) => {
    expect(
      columnOf(
        read(
          lines(
            `time_s;${header}`,
            ROWS.map(({ timeS, coolantC }) => `${timeS};${coolantC}`),
          ),
        ),
        'coolant',
      ),
    ).toMatchObject({ unit, unitFrom: 'header' });
  });

  it.each(['COOLANT_TEMPERATURE ()', 'ENGINE_COOLANT_TEMP', 'COOLANT_TEMP', 'cTemp', 'Coolant Temp', 'Water temp'])(
    'knows %s but not its unit',
    (header) => {
      expect(
        refused(
          lines(
            `time_s;${header}`,
            ROWS.map(({ timeS, coolantC }) => `${timeS};${coolantC}`),
          ),
        ).asks[0]?.field,
      ).toBe('units.coolant');
    },
  );

  it.each([
    ['Speed (OBD)(mph)', 1.609344],
    ['MPH', 1.609344],
    ['KPH', 1],
    ['Speed (GPS) (m/s)', 3.6],
    ['Vehicle speed (km/h)', 1],
  ])('turns %s into km/h', (header, factor) => {
    const { samples } = read(
      lines(
        `time_s;coolant_c;${header}`,
        ROWS.map(({ timeS, coolantC, speedKmh }) => `${timeS};${coolantC};${speedKmh}`),
      ),
    );
    expect(samples[899]?.speedKmh).toBeCloseTo(50 * factor, 6);
  });

  it('drops where the car went and says so, in any file', () => {
    const { samples, understood } = read(
      lines(
        'time_s,Latitude,Longtitude,Altitude,Bearing,coolant_c',
        ROWS.map(({ timeS, coolantC }) => `${timeS},52.51,13.37,40,180,${coolantC}`),
      ),
    );
    expect(understood.locationColumnsDropped).toEqual(['Latitude', 'Longtitude', 'Altitude', 'Bearing']);
    expect(JSON.stringify({ samples, understood })).not.toMatch(/52\.51|13\.37/);
  });

  it('skips what stands before the header, reads a row of units, and leaves out repeated headers and torn rows', () => {
    const header = 'Time;Coolant;Speed';
    const rows = ROWS.map(({ timeS, coolantC, speedKmh }) =>
      timeS % 100 === 50 ? `${timeS};${coolantC}` : `${timeS};${coolantC};${speedKmh}`,
    );
    const log = read(lines('# some logger', 'sep=;', '', header, 's;°C;km/h', rows.slice(0, 500), header, rows.slice(500)));
    expect(log.understood.headerLine).toBe(4);
    expect(columnOf(log, 'coolant')).toMatchObject({ unit: '°C', unitFrom: 'unit row' });
    expect(log.understood.dropped).toEqual([
      { reason: 'not 3 cells like the other rows', count: 9, lines: [56, 156, 256, 356, 456, 557, 657, 757, 857] },
      { reason: 'the header again', count: 1, lines: [506] },
    ]);
  });

  it('drops codes for no answer but keeps a temperature that passes through 127', () => {
    const coded = read(
      lines(
        'time_s;coolant_c',
        ROWS.map(({ timeS, coolantC }) => `${timeS};${timeS % 50 === 0 ? 127 : coolantC}`),
      ),
    );
    expect(coded.samples).toHaveLength(882);
    expect(coded.understood.dropped[0]).toMatchObject({ reason: "127 stands for 'no answer'", count: 18 });
    const boiling = read(
      lines(
        'time_s;coolant_c',
        Array.from({ length: 200 }, (_, timeS) => `${timeS};${Math.round(80 + timeS * 0.3)}`),
      ),
    );
    expect(boiling.samples.map(({ coolantC }) => coolantC)).toContain(127);
  });

  it('takes the longest of several runs in one file', () => {
    const { samples, understood } = read(
      lines(
        'time_s,coolant_c',
        ROWS.slice(0, 200).map(({ timeS, coolantC }) => `${timeS},${coolantC}`),
        ROWS.map(({ timeS, coolantC }) => `${timeS},${coolantC}`),
      ),
    );
    expect(samples).toHaveLength(900);
    expect(understood.dropped[0]).toMatchObject({ reason: 'another run of the engine: the time starts again', count: 200 });
  });

  it('shows gaps', () => {
    const { understood } = read(
      lines(
        'time_s,coolant_c',
        ROWS.filter(({ timeS }) => timeS < 300 || timeS >= 550).map(({ timeS, coolantC }) => `${timeS},${coolantC}`),
      ),
    );
    expect(understood.gaps).toEqual([{ fromS: 299, toS: 550 }]);
  });
});

describe('refusals', () => {
  it.each([
    ['', /does not look like a table/],
    ['hello world', /does not look like a table/],
    ['time_s,coolant_c\n\u0000', /not a text file/],
    [
      lines(
        'time,coolant temp (°C)',
        ROWS.map(({ timeS, coolantC }) => `${timeS},0,${coolantC},5`),
      ),
      /Decimal commas/,
    ],
    [lines('time_s,coolant_c', 'a,b'), /holds no numbers/],
  ])('%#: says what to change', (text, problem) => {
    expect(refused(text).problem).toMatch(problem);
  });

  it('asks which column it is, by header or number, and takes either answer', () => {
    const named = lines(
      'time_s,foo (°C),bar',
      ROWS.map(({ timeS, coolantC }) => `${timeS},${coolantC},1`),
    );
    expect(refused(named).asks[0]).toMatchObject({ field: 'columns.coolant', options: ['time_s', 'foo (°C)', 'bar'] });
    expect(read(named, { columns: { coolant: 'foo (°C)' } }).samples[899]?.coolantC).toBe(88);
    const bare = lines(ROWS.map(({ timeS, coolantC }) => `${timeS},${coolantC}`));
    expect(refused(bare).asks[0]).toMatchObject({ field: 'columns.coolant', options: ['column 1', 'column 2'] });
    expect(read(bare, { columns: { time: 1, coolant: 2 }, units: { coolant: '°C' } }).samples[899]).toEqual({ timeS: 899, coolantC: 88 });
  });

  it('keeps to its bounds', () => {
    const text = lines(
      'time_s,coolant_c',
      ROWS.map(({ timeS, coolantC }) => `${timeS},${coolantC}`),
    );
    expect(refused(text, { limits: { rows: 899, characters: 1e6 } }).problem).toMatch(/900 readings/);
    expect(refused(text, { limits: { rows: 1e6, characters: 1000 } }).problem).toMatch(/million characters/);
  });
});

describe('shape', () => {
  it('is the same for two files of one logger and another for another', () => {
    const one = read(
      lines(
        'time_s,coolant_c',
        ROWS.map(({ timeS, coolantC }) => `${timeS},${coolantC}`),
      ),
    );
    const two = read(
      lines(
        'time_s,coolant_c',
        ROWS.slice(100).map(({ timeS }) => `${timeS},31`),
      ),
    );
    const other = read(
      lines(
        'time_s;coolant_c',
        ROWS.map(({ timeS, coolantC }) => `${timeS};${coolantC}`),
      ),
    );
    expect(two.shape).toBe(one.shape);
    expect(other.shape).not.toBe(one.shape);
  });
});
