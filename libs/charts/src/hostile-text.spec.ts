import { describe, expect, it } from '@jest/globals';
import {
  coolingCurve,
  jugs,
  moneyBars,
  rangeBar,
  readingRule,
  returnsTimeline,
  thermostatPlan,
  warmUpChart,
  type Drawing,
  type DrawingOptions,
} from './index.ts';
import { FEATURES, LOGS } from './testing/samples.ts';
import { xmlFault } from './testing/well-formed.ts';

const EVIL = '</text><script>alert(1)</script>&"\'\u0000\u0008\uD800';
const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'evil', widthPx: 640 };
const amount = { amount: 1, text: EVIL };

const DRAWINGS: Readonly<Record<string, () => Drawing>> = {
  readingRule: () => readingRule({ limitC: 50, reading: null, belowText: EVIL, aboveText: EVIL }, OPTIONS),
  jugs: () => jugs({ jugMl: 1000, markMl: 50, jugs: [{ liquid: 'water', amountMl: 10, name: EVIL }] }, OPTIONS),
  rangeBar: () =>
    rangeBar(
      { freezes: { tempC: -27, knownBy: 'measured', note: EVIL, figure: EVIL }, boils: { tempC: 121, knownBy: 'measured' } },
      OPTIONS,
    ),
  thermostatPlan: () => thermostatPlan({ name: EVIL, features: FEATURES }, OPTIONS),
  warmUpChart: () => warmUpChart({ ...LOGS, before: { label: EVIL, samples: LOGS.before?.samples ?? [] } }, OPTIONS),
  returnsTimeline: () =>
    returnsTimeline(
      {
        todayText: EVIL,
        suppliers: [
          { name: EVIL, terms: EVIL, outText: EVIL, creditDays: 3, units: [{ side: 'sent', days: 4, amountText: EVIL, note: EVIL }] },
        ],
      },
      OPTIONS,
    ),
  moneyBars: () => moneyBars({ form: 'by-month', months: [{ label: EVIL, recovered: amount, lost: amount }] }, OPTIONS),
  coolingCurve: () => coolingCurve({ readings: [{ clockMin: 1, tempC: 2 }], estimate: [], limitC: 50 }, OPTIONS),
};

describe('text from people', () => {
  it.each(Object.keys(DRAWINGS))('stays text in %s', (name) => {
    const { svg } = DRAWINGS[name]?.() ?? { svg: '' };
    expect(xmlFault(svg)).toBeNull();
    expect(svg).not.toContain('<script');
  });

  it('is still there, escaped', () => {
    expect(DRAWINGS['moneyBars']?.().svg).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
  });
});
