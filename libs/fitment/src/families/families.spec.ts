import { describe, expect, it } from '@jest/globals';
import { comparison } from '../comparison/comparison.ts';
import { checkReading } from './check-reading.ts';
import { comparisonFeatures } from './comparison-features.ts';
import { partFamilies } from './part-families.ts';
import { type FamilyFeature } from './part-family.types.ts';
import { thermostat } from './thermostat.ts';

const featureOf = (key: string): FamilyFeature => {
  const found = partFamilies.flatMap(({ features }) => features).find((feature) => feature.key === key);
  if (found === undefined) throw new Error(`no feature ${key}`);
  return found;
};

describe('the families a workshop starts with', () => {
  it('are five, each with a sealing feature and a caution', () => {
    expect(partFamilies.map(({ id }) => id)).toEqual(['thermostat', 'water-pump', 'hose', 'cap', 'sensor']);
    for (const { features, cautions } of partFamilies) {
      expect(features.some(({ criticality }) => criticality === 'sealing')).toBe(true);
      expect(cautions.length).toBeGreaterThan(0);
    }
  });

  it.each(partFamilies.flatMap(({ id, features }) => features.map((feature) => [id, feature.key, feature] as const)))(
    '%s, %s can be measured and says how',
    (_, __, feature) => {
      expect(feature.howToMeasure.length).toBeGreaterThan(15);
      expect(feature.instruments.length).toBeGreaterThan(0);
      const [best] = feature.instruments;
      expect(best?.expandedUncertainty).toBe(Math.min(...feature.instruments.map(({ expandedUncertainty }) => expandedUncertainty)));
      if (feature.kind === 'category') expect(feature.values.length).toBeGreaterThan(1);
      else expect(feature.plausible.high - feature.plausible.low).toBeGreaterThan(feature.tolerance);
    },
  );

  it('have the features by which thermostats differ', () => {
    expect(thermostat.features.map(({ key }) => key)).toEqual([
      'seal',
      'flangeDiameterMm',
      'overallHeightMm',
      'valveDiameterMm',
      'openingTemperatureC',
      'bleedDevice',
      'bypassValve',
      'housing',
    ]);
  });
});

describe('checkReading', () => {
  const message = (key: string, value: unknown, family = 'thermostat'): string => {
    const check = checkReading(family, featureOf(key), { value });
    return check.ok ? 'ok' : check.message;
  };

  it.each([
    [5, 'A flange diameter of 5 mm makes no sense for a thermostat: it is 30 to 100 mm. If 5 was in cm, type 50.'],
    [
      500,
      'A flange diameter of 500 mm makes no sense for a thermostat: it is 30 to 100 mm. If 500 was with the point one place off, type 50.',
    ],
    [2.13, 'A flange diameter of 2.13 mm makes no sense for a thermostat: it is 30 to 100 mm. If 2.13 was in inches, type 54.1.'],
    [100000, 'A flange diameter of 100000 mm makes no sense for a thermostat: it is 30 to 100 mm. Read it again.'],
    [54, 'ok'],
  ])('a flange of %p', (value, words) => {
    expect(message('flangeDiameterMm', value)).toBe(words);
  });

  it('knows °F, bar and counted things', () => {
    expect(message('openingTemperatureC', 180)).toContain('If 180 was in °F, type 82.2.');
    expect(message('openingPressureKPa', 1.1, 'cap')).toBe(
      'An opening pressure of 1.1 kPa makes no sense for a cap: it is 20 to 250 kPa. If 1.1 was in bar, type 110.',
    );
    expect(message('mountingHoles', 5.5, 'water pump')).toBe('The number of mounting holes is counted: type a whole number.');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, '54', null, undefined])('refuses %p as a figure', (value) => {
    expect(message('flangeDiameterMm', value)).toContain('is a number');
  });

  it('names the kinds of a category', () => {
    expect(message('seal', 'o-ring')).toBe('ok');
    expect(message('seal', 'glue')).toContain('O-ring, flat gasket, moulded rim');
  });
});

describe('comparisonFeatures', () => {
  it('takes the best instrument in the shop', () => {
    const uncertaintyWith = (instruments: Parameters<typeof comparisonFeatures>[1]): number | undefined =>
      comparisonFeatures(thermostat, instruments).features.find(({ key }) => key === 'flangeDiameterMm')?.standardUncertainty;
    expect(uncertaintyWith(['steel-rule'])).toBe(0.25);
    expect(uncertaintyWith(['steel-rule', 'vernier'])).toBe(0.025);
  });

  it('names what cannot be read without an instrument', () => {
    expect(comparisonFeatures(thermostat, []).unreadable).toEqual(['flangeDiameterMm', 'overallHeightMm', 'valveDiameterMm']);
  });

  it('feeds a comparison that asks for what parts three look-alikes: the flange', () => {
    const { features } = comparisonFeatures(thermostat, ['vernier']);
    const shared = { seal: 'o-ring', overallHeightMm: 62, openingTemperatureC: 82, bleedDevice: 'jiggle-pin', housing: 'separate' };
    const answer = comparison({
      features,
      candidates: [52, 54, 56].map((flangeDiameterMm) => ({ id: `F${flangeDiameterMm}`, values: { ...shared, flangeDiameterMm } })),
      readings: [{ key: 'seal', value: 'o-ring' }],
    });
    expect(answer.nextReading?.key).toBe('flangeDiameterMm');
  });
});
