import {
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
  type FillAccountData,
  type ReturnsTimelineData,
  type ThermostatFeatures,
  type WarmUpData,
} from '../index.ts';

/** A drawing with its data in place, waiting for a palette and a width. */
export type Sample = (options: DrawingOptions) => Drawing;

export const FEATURES: ThermostatFeatures = {
  flangeDiameterMm: 54,
  valveDiameterMm: 35,
  heightMm: 46.5,
  sealType: 'o-ring',
  bleedDevice: 'jiggle-pin',
  hasBypassValve: true,
};

const UNKNOWN: ThermostatFeatures = {
  flangeDiameterMm: null,
  valveDiameterMm: null,
  heightMm: null,
  sealType: null,
  bleedDevice: null,
  hasBypassValve: null,
};

const climb = (share: number) => (minute: number) => ({
  minute,
  tempC: Math.round(16 + 72 * share * Math.min(1, minute / 14)),
  speedKmh: minute < 1 ? 0 : 40,
});

/** An invented pair of logs, a reading every six seconds. */
export const LOGS: WarmUpData = {
  before: {
    label: 'Before, 8 June: 62 °C in town, 56 at speed',
    samples: Array.from({ length: 251 }, (_, index) => climb(0.62)(index / 10)),
  },
  after: {
    label: 'After, 9 June',
    samples: Array.from({ length: 251 }, (_, index) => climb(1)(index / 10)),
    fit: [
      { minute: 2, tempC: 26 },
      { minute: 14, tempC: 88 },
      { minute: 25, tempC: 88 },
    ],
    knee: { minute: 14, tempC: 88, halfWidthC: 2 },
  },
  nominalC: 88,
};

export const ACCOUNT: FillAccountData = {
  holdsL: 6.2,
  holdsKnownBy: 'measured',
  missingOnArrival: { volumeL: 0.2, isAbout: true },
  drainedKept: { volumeL: 3.2 },
  drainedWaste: { volumeL: 1.6 },
  firstFill: { volumeL: 4.7 },
  afterShortRun: { volumeL: 0.15 },
  afterRunHot: { volumeL: 0.06 },
  nextMorning: { volumeL: 0.04 },
  toleranceL: 0.2,
  morningLimitL: 0.15,
  verdict: 'fits',
  morningVerdict: 'fits',
};

/** Invented suppliers. */
export const RETURNS: ReturnsTimelineData = {
  todayText: 'Tue 9',
  suppliers: [
    {
      name: 'Norrow Parts',
      terms: 'back in 30 days, credits in 21, no restocking',
      outText: '€86.90',
      creditDays: 21,
      units: [
        { side: 'sent', days: 33, amountText: '€41.00', note: 'key 18' },
        { side: 'sent', days: 12, amountText: '€19.80', note: 'key 3' },
        { side: 'sent', days: 4, amountText: '€26.10', note: 'key 7' },
        { side: 'shelf', days: 2, amountText: '€26.10', note: 'Thursday', isUrgent: true },
        { side: 'shelf', days: 17, amountText: '€12.40', note: 'in 17 d' },
      ],
    },
    {
      name: 'Halfmoon Factors',
      terms: 'back in 28 days, unopened',
      outText: '€0.00',
      creditDays: null,
      units: [{ side: 'shelf', days: -2, amountText: '€9.00', note: 'key 2' }],
    },
  ],
};

const euro = (amount: number) => ({ amount, text: `€${amount.toFixed(2)}` });

/** Every drawing with plain data, unknown data and none. */
export const SAMPLES: Readonly<Record<string, Sample>> = {
  'reading rule': (options) => readingRule({ limitC: 50, reading: { tempC: 47.5, uncertaintyC: 4 } }, options),
  'reading rule, off the rule': (options) => readingRule({ limitC: 50, reading: { tempC: 92, uncertaintyC: 4 } }, options),
  'reading rule, none': (options) => readingRule({ limitC: 50, reading: null }, options),
  jugs: (options) =>
    jugs(
      {
        jugMl: 1000,
        markMl: 50,
        jugs: [
          { liquid: 'concentrate', amountMl: 1000, isPoured: true },
          { liquid: 'concentrate', amountMl: 450 },
          { liquid: 'water', amountMl: 350 },
          { liquid: 'mixed', amountMl: 40 },
        ],
      },
      options,
    ),
  'jugs, none': (options) => jugs({ jugMl: 1000, markMl: 50, jugs: [] }, options),
  'range bar': (options) =>
    rangeBar(
      {
        freezes: { tempC: -27, knownBy: 'computed', note: 'freezes, asked for −27' },
        boils: { tempC: 121, knownBy: 'computed', note: 'boils, cap 1.1 bar, at 240 m' },
        boilsOpen: { tempC: 105, knownBy: 'computed' },
        thermostat: { tempC: 88, knownBy: 'measured' },
        coldest: { tempC: -31, knownBy: 'assumed' },
        hottest: { tempC: 38, knownBy: 'assumed' },
      },
      options,
    ),
  'range bar, none': (options) => rangeBar({ freezes: null, boils: null }, options),
  'thermostat section': (options) =>
    thermostatSection({ name: 'A', features: FEATURES, marks: { heightMm: 'next', flangeDiameterMm: 'does-not' } }, options),
  'thermostat section, unknown': (options) => thermostatSection({ name: 'Removed part', features: UNKNOWN }, options),
  'thermostat plan': (options) =>
    thermostatPlan(
      { name: 'C', features: { ...FEATURES, sealType: 'moulded-rim', bleedDevice: 'plain-hole' }, marks: { bleedDevice: 'does-not' } },
      options,
    ),
  'thermostat plan, unknown': (options) =>
    thermostatPlan({ name: 'Removed part', features: UNKNOWN, marks: { bleedDevice: 'next' } }, options),
  'warm-up': (options) => warmUpChart(LOGS, options),
  'warm-up, none': (options) => warmUpChart({ before: null, after: null, nominalC: 88 }, options),
  'fill account': (options) => fillAccount(ACCOUNT, options),
  'fill account, none': (options) => fillAccount({ ...ACCOUNT, holdsL: null, firstFill: null, nextMorning: null }, options),
  returns: (options) => returnsTimeline(RETURNS, options),
  'returns, none': (options) => returnsTimeline({ todayText: 'Tue 9', suppliers: [] }, options),
  'money by month': (options) =>
    moneyBars(
      {
        form: 'by-month',
        months: ['Apr', 'May', 'Jun'].map((label, index) => ({ label, recovered: euro(100 + index * 56), lost: euro(index * 20) })),
      },
      options,
    ),
  'money by age': (options) =>
    moneyBars(
      {
        form: 'by-age',
        ages: [
          { label: '0 to 10 days', out: euro(77.1) },
          { label: 'over 30 days', out: euro(99.6), isLate: true },
        ],
      },
      options,
    ),
  'money, none': (options) => moneyBars({ form: 'by-age', ages: [] }, options),
  cooling: (options) =>
    coolingCurve(
      {
        readings: [
          { clockMin: 486, tempC: 88, uncertaintyC: 4 },
          { clockMin: 565, tempC: 58, uncertaintyC: 2 },
        ],
        estimate: [
          { clockMin: 565, tempC: 58 },
          { clockMin: 595, tempC: 49 },
          { clockMin: 660, tempC: 35 },
        ],
        limitC: 50,
        nowMin: 580,
      },
      options,
    ),
  'cooling, none': (options) => coolingCurve({ readings: [], estimate: [], limitC: 50 }, options),
};
