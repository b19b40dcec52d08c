import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  ChartInputError,
  coolingCurve,
  fillAccount,
  jugs,
  moneyBars,
  rangeBar,
  readingRule,
  returnsTimeline,
  thermostatPlan,
  thermostatSection,
  warmUpChart,
  type Drawing,
  type DrawingOptions,
} from './index.ts';
import { ACCOUNT, FEATURES } from './testing/samples.ts';
import { impossibleValues } from './testing/svg-facts.ts';
import { xmlFault } from './testing/well-formed.ts';

/** Any finite number: ordinary ones, every size that is drawn, and now and then one beyond. */
const finite = fc.oneof(
  { weight: 90, arbitrary: fc.integer({ min: -200, max: 2000 }) },
  { weight: 60, arbitrary: fc.double({ min: -1e15, max: 1e15, noNaN: true }) },
  { weight: 45, arbitrary: fc.double({ min: -1, max: 1, noNaN: true }) },
  { weight: 4, arbitrary: fc.constantFrom(-0, Number.MIN_VALUE, 1e15, -1e15) },
  { weight: 1, arbitrary: fc.constantFrom(Number.MAX_VALUE, -Number.MAX_VALUE) },
);
const positive = finite.map(Math.abs);
const options: fc.Arbitrary<DrawingOptions> = fc.record({
  palette: fc.constantFrom('page' as const, 'print' as const),
  idPrefix: fc.constant('any'),
  widthPx: fc.oneof(fc.integer({ min: 200, max: 1600 }), fc.constant(318)),
  ground: fc.constantFrom('floor' as const, 'sheet' as const),
});

/** Holds whatever the data: a whole drawing, or a refusal that names the field. True when it was drawn. */
const drawsOrRefuses = (draw: () => Drawing): boolean => {
  try {
    const { svg, table } = draw();
    expect(xmlFault(svg)).toBeNull();
    expect(impossibleValues(svg)).toEqual([]);
    expect(JSON.stringify(table)).not.toMatch(/NaN|Infinity|undefined/);
    return true;
  } catch (error) {
    if (!(error instanceof ChartInputError)) throw error;
    expect(error.field).not.toBe('');
    return false;
  }
};

const mark = fc.record({ tempC: finite, knownBy: fc.constantFrom('measured' as const, 'assumed' as const, 'computed' as const) });
const sample = fc.record({ minute: finite, tempC: finite, speedKmh: fc.option(finite) });
const knee = fc.option(fc.record({ minute: finite, tempC: finite, halfWidthC: positive }));
const log = fc.option(
  fc.record({
    label: fc.string(),
    samples: fc.array(sample, { maxLength: 40 }),
    fit: fc.array(fc.record({ minute: finite, tempC: finite }), { maxLength: 4 }),
    knee,
  }),
);
const amount = fc.record({ amount: finite, text: fc.string() });
const size = fc.oneof({ weight: 4, arbitrary: fc.double({ min: 1, max: 500, noNaN: true }) }, { weight: 1, arbitrary: finite });
/** Of several figures in one drawing, mostly all can be drawn. */
const ordinary = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    // Doubles are drawn by their bits, which makes most of them tiny: hundredths are what a person types.
    { weight: 9, arbitrary: fc.integer({ min: min * 100, max: max * 100 }).map((hundredths) => hundredths / 100) },
    { weight: 1, arbitrary: positive },
  );
const volumeL = ordinary(0, 20);
const volume = fc.option(fc.record({ volumeL, isAbout: fc.boolean() }));
const point = fc.record({ clockMin: finite, tempC: finite });

const ARBITRARIES: Readonly<Record<string, fc.Arbitrary<(given: DrawingOptions) => Drawing>>> = {
  readingRule: fc.tuple(finite, finite, positive).map(
    ([limitC, tempC, uncertaintyC]) =>
      (given) =>
        readingRule({ limitC, reading: { tempC, uncertaintyC } }, given),
  ),
  jugs: fc.tuple(ordinary(500, 5_000), ordinary(10, 200), fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 })).map(
    ([jugMl, markMl, shares]) =>
      (given) =>
        jugs({ jugMl, markMl, jugs: shares.map((share) => ({ liquid: 'water' as const, amountMl: share * jugMl })) }, given),
  ),
  rangeBar: fc.tuple(mark, mark, mark, mark, mark).map(
    ([freezes, boils, coldest, hottest, thermostat]) =>
      (given) =>
        rangeBar({ freezes, boils, coldest, hottest, thermostat }, given),
  ),
  thermostatSection: fc.tuple(size, size, size).map(
    ([a, b, c]) =>
      (given) =>
        thermostatSection({ name: 'A', features: { ...FEATURES, flangeDiameterMm: a, heightMm: b, valveDiameterMm: c } }, given),
  ),
  thermostatPlan: fc.tuple(fc.double({ min: 1, max: 500, noNaN: true }), fc.double({ min: 1, max: 500, noNaN: true })).map(
    ([flangeDiameterMm, valveDiameterMm]) =>
      (given) =>
        thermostatPlan({ name: 'A', features: { ...FEATURES, flangeDiameterMm, valveDiameterMm } }, given),
  ),
  warmUpChart: fc.tuple(log, log, fc.option(finite), positive).map(
    ([before, after, nominalC, bandHalfWidthC]) =>
      (given) =>
        warmUpChart({ before, after, nominalC, bandHalfWidthC }, given),
  ),
  fillAccount: fc.tuple(fc.option(volumeL), volume, volume, volume, volume, volumeL).map(
    ([holdsL, missingOnArrival, drainedKept, firstFill, nextMorning, toleranceL]) =>
      (given) =>
        fillAccount({ ...ACCOUNT, holdsL, missingOnArrival, drainedKept, firstFill, nextMorning, toleranceL }, given),
  ),
  returnsTimeline: fc
    .tuple(
      fc.option(positive),
      fc.array(
        fc.record({ amountText: fc.string(), side: fc.constantFrom('sent' as const, 'shelf' as const), days: finite, note: fc.string() }),
        { maxLength: 8 },
      ),
    )
    .map(
      ([creditDays, units]) =>
        (given) =>
          returnsTimeline(
            { todayText: 'Tue 9', suppliers: [{ name: 'Norrow Parts', terms: '', outText: '€1.00', creditDays, units }] },
            given,
          ),
    ),
  'moneyBars by month': fc
    .array(fc.record({ label: fc.string(), recovered: amount, lost: amount }), { maxLength: 14 })
    .map((months) => (given) => moneyBars({ form: 'by-month', months }, given)),
  'moneyBars by age': fc
    .array(fc.record({ label: fc.string(), out: amount }), { maxLength: 6 })
    .map((ages) => (given) => moneyBars({ form: 'by-age', ages }, given)),
  coolingCurve: fc.tuple(fc.array(point, { maxLength: 12 }), fc.array(point, { maxLength: 12 }), finite, finite).map(
    ([readings, estimate, limitC, nowMin]) =>
      (given) =>
        coolingCurve({ readings, estimate, limitC, nowMin }, given),
  ),
};

describe('any finite figures', () => {
  it.each(Object.keys(ARBITRARIES))('make a whole drawing or a refusal: %s', (name) => {
    const drawings = ARBITRARIES[name] ?? fc.constant(() => ({ svg: '', title: '', table: { caption: '', head: [], rows: [] } }));
    let drawn = 0;
    fc.assert(
      fc.property(drawings, options, (draw, given) => {
        if (drawsOrRefuses(() => draw(given))) drawn += 1;
      }),
      { numRuns: 150 },
    );
    // A refusal is an answer, but a test that only ever met refusals would show nothing.
    expect(drawn).toBeGreaterThan(30);
  });
});

describe('figures that are none', () => {
  const given: DrawingOptions = { palette: 'page', idPrefix: 'a', widthPx: 400 };

  it('are refused with the field', () => {
    expect(() => readingRule({ limitC: Number.NaN, reading: null }, given)).toThrow(
      'limitC is not a number: leave it out or give a figure.',
    );
    expect(() => readingRule({ limitC: 1e20, reading: null }, given)).toThrow('limitC is larger than anything a workshop measures');
    expect(() => coolingCurve({ readings: [{ clockMin: 1, tempC: Infinity }], estimate: [], limitC: 50 }, given)).toThrow(
      'readings.0.tempC is not a number',
    );
  });

  it('and so are options that can’t be drawn', () => {
    expect(() => readingRule({ limitC: 50, reading: null }, { ...given, widthPx: 20 })).toThrow('A drawing is 200 to 4000 px wide');
    expect(() => readingRule({ limitC: 50, reading: null }, { ...given, idPrefix: '1 "x' })).toThrow('Start idPrefix with a letter');
  });
});
