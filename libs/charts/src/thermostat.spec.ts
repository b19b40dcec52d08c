import { describe, expect, it } from '@jest/globals';
import { type DrawingOptions } from './drawing.ts';
import { FEATURES } from './testing/samples.ts';
import { countParts, textFacts } from './testing/svg-facts.ts';
import { sectionShape } from './thermostat/section-shape.ts';
import { thermostatScale } from './thermostat/thermostat-scale.ts';
import { thermostatPlan } from './thermostat-plan.ts';
import { thermostatSection } from './thermostat-section.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 't', widthPx: 224, ground: 'sheet' };
const words = (svg: string): string[] => textFacts(svg).map(({ content }) => content);

describe('one scale for all', () => {
  const tall = { ...FEATURES, heightMm: 49 };
  const small = { ...FEATURES, flangeDiameterMm: 27, heightMm: 24.5 };
  const scale = thermostatScale([FEATURES, tall, small], 224);

  it('draws every dimension in proportion', () => {
    const [a, b, c] = [FEATURES, tall, small].map((features) => sectionShape(features, scale));
    expect(((a?.footY ?? 0) - (a?.topY ?? 0)) / 46.5).toBeCloseTo(scale.pxPerMm, 9);
    expect(((b?.footY ?? 0) - (b?.topY ?? 0)) / 49).toBeCloseTo(scale.pxPerMm, 9);
    expect((c?.halfFlange ?? 0) / (a?.halfFlange ?? 1)).toBeCloseTo(0.5, 9);
    expect((a?.halfValve ?? 0) * 2).toBeCloseTo(35 * scale.pxPerMm, 9);
  });

  it('sets all flanges on one line and one axis, and makes drawings of one height', () => {
    const drawings = [FEATURES, tall, small].map((features) => thermostatSection({ name: 'x', features, scale }, OPTIONS).svg);
    expect(new Set(drawings.map((svg) => /viewBox="[^"]*"/.exec(svg)?.[0])).size).toBe(1);
    expect(sectionShape(tall, scale).flangeY).toBe(sectionShape(small, scale).flangeY);
  });

  it('fits the widest and longest part into the width', () => {
    expect(scale.axisX + (scale.widestMm / 2) * scale.pxPerMm).toBeLessThanOrEqual(224 - 60);
  });
});

describe('thermostatSection', () => {
  it('writes its dimensions and says that it is not to be measured from', () => {
    expect(words(thermostatSection({ name: 'A', features: FEATURES }, OPTIONS).svg)).toEqual(['Ø 54.0', '46.5', 'not to be measured from']);
  });

  it('puts a question mark and broken lines where nothing is known', () => {
    const { svg } = thermostatSection({ name: 'A', features: { ...FEATURES, heightMm: null, flangeDiameterMm: null } }, OPTIONS);
    expect(words(svg)).toEqual(expect.arrayContaining(['Ø ?', '?']));
    expect(svg.split('stroke-dasharray="7 5"').length).toBeGreaterThan(4);
  });

  it('says in words what it points out', () => {
    const { svg } = thermostatSection(
      { name: 'C', features: FEATURES, marks: { flangeDiameterMm: 'does-not', heightMm: 'next' } },
      OPTIONS,
    );
    expect(words(svg)).toEqual(expect.arrayContaining(['does not fit', 'read next']));
  });

  it('draws a by-pass valve only where there is one or may be one', () => {
    const bypass = (hasBypassValve: boolean | null): number =>
      countParts(thermostatSection({ name: 'x', features: { ...FEATURES, hasBypassValve } }, OPTIONS).svg, 'bypass');
    expect([bypass(true), bypass(false), bypass(null)]).toEqual([1, 0, 1]);
  });

  it('draws each seal and each bleed device differently', () => {
    const seals = (['o-ring', 'flat-gasket', 'moulded-rim', null] as const).map(
      (sealType) => thermostatSection({ name: 'x', features: { ...FEATURES, sealType } }, OPTIONS).svg,
    );
    const bleeds = (['none', 'plain-hole', 'jiggle-pin', null] as const).map(
      (bleedDevice) => thermostatSection({ name: 'x', features: { ...FEATURES, bleedDevice } }, OPTIONS).svg,
    );
    expect(new Set(seals).size).toBe(4);
    expect(new Set(bleeds).size).toBe(4);
  });

  it('refuses a slip of the decimal point', () => {
    expect(() => thermostatSection({ name: 'x', features: { ...FEATURES, heightMm: 4650 } }, OPTIONS)).toThrow(
      'heightMm is 4650 mm: enter 1 to 500 mm',
    );
  });
});

describe('thermostatPlan', () => {
  it('says seal, bleed and by-pass in words, with what is pointed out', () => {
    const { svg } = thermostatPlan(
      { name: 'C', features: { ...FEATURES, bleedDevice: 'plain-hole' }, marks: { bleedDevice: 'does-not' } },
      OPTIONS,
    );
    expect(words(svg)).toEqual([
      'Ø 35.0',
      'seal: O-ring',
      'bleed: plain hole, does not fit',
      'by-pass valve: yes',
      'not to be measured from',
    ]);
    expect(countParts(svg, 'marked')).toBe(1);
  });

  it('asks where nothing is known', () => {
    const { svg, table } = thermostatPlan({ name: 'x', features: { ...FEATURES, sealType: null, valveDiameterMm: null } }, OPTIONS);
    expect(words(svg)).toEqual(expect.arrayContaining(['Ø ?', 'seal: ?']));
    expect(table.rows).toContainEqual(['seal', 'not known', '']);
  });
});
