import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { CRC_ETHYLENE } from '../spec-support/crc-ethylene.ts';
import { type Glycol } from '../glycol.ts';
import { additiveMassPercent, additiveVolumePercent } from './additive-volume.ts';
import { type Additive, type AdditiveInput } from './additive.ts';
import { densityAt20 } from './density-at-20.ts';
import { massPercentOfParts } from './mass-percent-of-parts.ts';
import { productPercent } from './product-percent.ts';
import { strengthOfMass } from './strength-of-mass.ts';
import { toAdditive } from './to-additive.ts';
import { toTarget } from './to-target.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

const anyGlycol = fc.constantFrom<Glycol>('ethylene', 'propylene');

function additiveOf(glycol: Glycol, input: AdditiveInput): Additive {
  const found = toAdditive(glycol, input);
  if (!found.ok) throw new Error(found.problem.message);
  return found.additive;
}

describe('density at 20 °C', () => {
  // CRC Handbook, 102nd edition, ethylene glycol at 20 °C (read).
  it.each(CRC_ETHYLENE)('CRC at %d mass %: %d kg/L', (massPercent, printed) => {
    expect(Math.abs(densityAt20('ethylene', massPercent / 100) / printed - 1)).toBeLessThan(0.002);
  });
  it('begins at water and ends at the pure glycol', () => {
    expect(densityAt20('ethylene', 0)).toBeCloseTo(0.9982, 12);
    expect(densityAt20('propylene', 0)).toBeCloseTo(0.9982, 12);
    expect(densityAt20('ethylene', 1)).toBeCloseTo(1.1135, 12);
    expect(densityAt20('propylene', 1)).toBeCloseTo(1.0361, 12);
  });
  it('has no step at the end of the polynomial', () => {
    for (const glycol of ['ethylene', 'propylene'] as const) {
      expect(densityAt20(glycol, 0.6 + 1e-12)).toBeCloseTo(densityAt20(glycol, 0.6), 9);
    }
  });
  // Shrink on mixing from Melinder's density: ethylene up to about 1.2 %, propylene 2.2 % (computed).
  it.each([
    ['ethylene', 1.1135, 0.011, 0.013],
    ['propylene', 1.0361, 0.02, 0.022],
  ] as const)('%s glycol shrinks on mixing by at most so much', (glycol, pure, least, most) => {
    const shrinks = Array.from({ length: 99 }, (_unused, index) => {
      const w = (index + 1) / 100;
      return 1 - 1 / (w / pure + (1 - w) / 0.9982) / densityAt20(glycol, w);
    });
    expect(Math.max(...shrinks)).toBeGreaterThan(least);
    expect(Math.max(...shrinks)).toBeLessThan(most);
    expect(Math.min(...shrinks)).toBeGreaterThanOrEqual(0);
  });
});

describe('volume % of an additive', () => {
  it('is the table column up to its end, and meets pure glycol', () => {
    expect(additiveMassPercent('ethylene', 47.6)).toBe(50);
    expect(additiveMassPercent('ethylene', 57.8)).toBe(60);
    expect(additiveMassPercent('ethylene', 100)).toBeCloseTo(100, 12);
    expect(additiveMassPercent('ethylene', 57.8000001)).toBeCloseTo(60, 5);
    expect(additiveMassPercent('propylene', 100)).toBeCloseTo(100, 12);
  });
  it('comes back from mass %', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(0, 100)), (glycol, volumePercent) => {
        expect(additiveVolumePercent(glycol, additiveMassPercent(glycol, volumePercent))).toBeCloseTo(volumePercent, 9);
      }),
    );
  });
  it('rises with it', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(0, 99)), (glycol, volumePercent) => {
        expect(additiveMassPercent(glycol, volumePercent + 0.5)).toBeGreaterThan(additiveMassPercent(glycol, volumePercent));
      }),
    );
  });
});

describe('content from the label', () => {
  it('1:1 to −37 °C back-solves to what mixes to −37 °C', () => {
    const { massPercent, basis } = additiveOf('ethylene', { label: { partsProduct: 1, partsWater: 1, freezingPointC: -37 } });
    const mixed = massPercentOfParts('ethylene', massPercent, { product: 1, water: 1 });
    expect(strengthOfMass('ethylene', mixed).freezingPointC).toBeCloseTo(-37, 9);
    expect(massPercent).toBeGreaterThan(98);
    expect(massPercent).toBeLessThan(100);
    expect(basis).toBe('label');
  });
  it('comes back for any content', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(70, 100)), (glycol, content) => {
        const mixed = massPercentOfParts(glycol, content, { product: 1, water: 1.5 });
        const { freezingPointC } = strengthOfMass(glycol, mixed);
        const found = additiveOf(glycol, { label: { partsProduct: 1, partsWater: 1.5, freezingPointC } });
        expect(found.massPercent).toBeCloseTo(content, 6);
      }),
    );
  });
  // Published: 93 mass % concentrate 1:1 by unmixed volumes freezes near −32.4 °C by the ASHRAE table (computed).
  it('the pessimistic fallback of 93 mass % gives −32.4 ± 0.3 °C at 1:1', () => {
    const fallback = additiveOf('ethylene', { isContentUnknown: true });
    expect(fallback).toMatchObject({ massPercent: 93, basis: 'fallback' });
    const mixed = massPercentOfParts('ethylene', fallback.massPercent, { product: 1, water: 1 });
    expect(Math.abs(strengthOfMass('ethylene', mixed).freezingPointC - -32.4)).toBeLessThanOrEqual(0.3);
    const unmixed = (100 * 0.93) / (1 + 0.9982 * (0.93 / 1.1135 + 0.07 / 0.9982));
    expect(Math.abs(strengthOfMass('ethylene', unmixed).freezingPointC - -32.4)).toBeLessThanOrEqual(0.3);
  });
  it('a ready-mixed label has no parts of water', () => {
    const found = additiveOf('ethylene', { label: { partsProduct: 1, partsWater: 0, freezingPointC: -33.8 } });
    expect(found.massPercent).toBeCloseTo(50, 9);
    expect(found.isReadyMixed).toBe(true);
    expect(productPercent(40, found)).toBeNull();
  });
  it('a label slightly beyond pure glycol is counted as pure, and said', () => {
    const found = toAdditive('ethylene', { label: { partsProduct: 1, partsWater: 1, freezingPointC: -39 } });
    expect(found).toMatchObject({ ok: true, additive: { massPercent: 100 }, warnings: [{ code: 'content-taken-as-pure' }] });
  });
  it('a label far beyond pure glycol is refused', () => {
    expect(toAdditive('ethylene', { label: { partsProduct: 1, partsWater: 3, freezingPointC: -37 } })).toMatchObject({
      ok: false,
      problem: { code: 'label-impossible', kind: 'impossible', field: 'additive.label.freezingPointC' },
    });
  });
});

describe('what is no additive', () => {
  it.each([
    [{ volumePercent: 100, isWaterless: true }, 'waterless-fluid'],
    [{ freezingPointC: -37 }, 'additive-by-freezing-point'],
    [{}, 'exactly-one-needed'],
    [{ volumePercent: 95, massPercent: 95 }, 'exactly-one-needed'],
    [{ massPercent: 95, isContentUnknown: true }, 'exactly-one-needed'],
    [{ massPercent: 0 }, 'meaningless-value'],
    [{ volumePercent: 100.5 }, 'meaningless-value'],
    [{ label: { partsProduct: 0, partsWater: 1, freezingPointC: -37 } }, 'meaningless-value'],
    [{ label: { partsProduct: 1, partsWater: 1, freezingPointC: -60 } }, 'beyond-table'],
  ])('%j', (input, code) => {
    expect(toAdditive('ethylene', input)).toMatchObject({ ok: false, problem: { code } });
  });
});

describe('share of product', () => {
  it('is the inverse of mixing parts', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(61, 100)), fc.integer(STEPS).map(evenly(1, 99)), (glycol, content, share) => {
        const additive = additiveOf(glycol, { massPercent: content });
        const mixed = massPercentOfParts(glycol, content, { product: share, water: 100 - share });
        expect(productPercent(mixed, additive)).toBeCloseTo(share, 9);
      }),
    );
  });
  it('is nothing for a mixture stronger than the product', () => {
    expect(productPercent(95, additiveOf('ethylene', { massPercent: 90 }))).toBeNull();
  });
});

describe('targets', () => {
  const additive = additiveOf('ethylene', { massPercent: 93 });
  it('coldest air less 5 K where nobody says otherwise', () => {
    expect(toTarget('ethylene', { coldestAirC: -25 }, additive)).toMatchObject({ ok: true, strength: { freezingPointC: -30 } });
    expect(toTarget('ethylene', { coldestAirC: -25, marginK: 8 }, additive)).toMatchObject({ ok: true, strength: { freezingPointC: -33 } });
  });
  it('warm countries get water', () => {
    expect(toTarget('ethylene', { coldestAirC: 10 }, additive)).toMatchObject({ ok: true, strength: { volumePercent: 0 } });
  });
  it('too cold for the table', () => {
    expect(toTarget('ethylene', { coldestAirC: -45 }, additive)).toMatchObject({
      ok: false,
      problem: { code: 'beyond-table', field: 'target.coldestAirC' },
    });
  });
  it('50 % of product is less than 50 % of glycol', () => {
    const found = toTarget('ethylene', { productPercent: 50 }, additive);
    expect(found).toMatchObject({ ok: true });
    if (found.ok) expect(found.strength.volumePercent).toBeCloseTo(46.53, 2);
  });
  it.each([
    [{ productPercent: 101 }, 'meaningless-value'],
    [{ productPercent: 70 }, 'beyond-table'],
    [{ coldestAirC: -25, marginK: -1 }, 'meaningless-value'],
    [{ coldestAirC: -25, volumePercent: 40 }, 'exactly-one-needed'],
    [{ volumePercent: 61 }, 'beyond-table'],
  ])('%j is refused', (input, code) => {
    expect(toTarget('ethylene', input, additive)).toMatchObject({ ok: false, problem: { code } });
  });
});
