import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { ASHRAE_DENSITY, ASHRAE_DENSITY_VOLUME_PERCENT } from '../data/ashrae-density.ts';
import { ASHRAE_PROPERTIES } from '../spec-support/ashrae-properties.ts';
import { type Glycol } from '../glycol.ts';
import { additiveMassPercent } from '../strength/additive-volume.ts';
import { FREEZING_CURVE } from '../strength/freezing-curve.ts';
import { ashraeDensityKgPerL } from './ashrae-density.ts';
import { coolantProperties } from './coolant-properties.ts';
import { densityKgPerL } from './density.ts';
import { expandedByL, expansion, type Expansion, type ExpansionInput } from './expansion.ts';
import { heatCarrying } from './heat-carrying.ts';
import { mixtureProperties } from './mixture-properties.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

const GLYCOLS: readonly Glycol[] = ['ethylene', 'propylene'];

/** The ASHRAE columns of 60 volume % of ethylene glycol lie just beyond the freezing table; the polynomial ends at 60 mass %. */
function massFraction(glycol: Glycol, volumePercent: number): number {
  return Math.min(60, additiveMassPercent(glycol, volumePercent)) / 100;
}

// ASHRAE Handbook, Fundamentals (2001), against Melinder (IIR 2010). How far the two published sets disagree was
// computed; the bounds are the largest disagreements rounded up.
describe('Melinder against ASHRAE', () => {
  it.each([
    ['ethylene', 0.013],
    ['propylene', 0.009],
  ] as const)('density of %s glycol within %d', (glycol, bound) => {
    let compared = 0;
    for (const [tempC, ...cells] of ASHRAE_DENSITY[glycol]) {
      for (const [column, printed] of cells.entries()) {
        const volumePercent = ASHRAE_DENSITY_VOLUME_PERCENT[column] ?? Number.NaN;
        if (printed === null) continue;
        compared += 1;
        const computed = densityKgPerL(glycol, { tempC, massFraction: massFraction(glycol, volumePercent) });
        expect(Math.abs((computed * 1000) / printed - 1)).toBeLessThan(bound);
      }
    }
    expect(compared).toBeGreaterThan(120);
  });
  it.each([
    ['ethylene', 0.05, 0.085, 0.18],
    ['propylene', 0.005, 0.055, 0.2],
  ] as const)('%s glycol: heat capacity within %d, conductivity %d, viscosity %d', (glycol, heat, conductivity, viscosity) => {
    expect(ASHRAE_PROPERTIES[glycol].length).toBeGreaterThan(30);
    for (const [volumePercent, tempC, heatCapacity, printedConductivity, printedViscosity] of ASHRAE_PROPERTIES[glycol]) {
      const found = mixtureProperties(glycol, { tempC, massFraction: massFraction(glycol, volumePercent) });
      expect(Math.abs((found.heatCapacityKJPerKgK * 1000) / heatCapacity - 1)).toBeLessThan(heat);
      expect(Math.abs(found.conductivityWPerMK / printedConductivity - 1)).toBeLessThan(conductivity);
      expect(Math.abs(found.viscosityMPaS / printedViscosity - 1)).toBeLessThan(viscosity);
    }
  });
});

describe('ASHRAE density between its cells', () => {
  it('gives the cell itself', () => {
    expect(ashraeDensityKgPerL('ethylene', { tempC: 20, volumePercent: 50 })).toBeCloseTo(1.07335, 12);
    expect(ashraeDensityKgPerL('ethylene', { tempC: 100, volumePercent: 60 })).toBeCloseTo(1.03333, 12);
  });
  it('goes halfway', () => {
    expect(ashraeDensityKgPerL('ethylene', { tempC: 22.5, volumePercent: 45 })).toBeCloseTo((1.05968 + 1.07335 + 1.0576 + 1.07111) / 4, 12);
  });
  it('knows where it ends', () => {
    expect(ashraeDensityKgPerL('ethylene', { tempC: 20, volumePercent: 9.9 })).toBeNull();
    expect(ashraeDensityKgPerL('ethylene', { tempC: -20, volumePercent: 30 })).toBeNull();
    expect(ashraeDensityKgPerL('ethylene', { tempC: 100.1, volumePercent: 50 })).toBeNull();
  });
});

function expansionOf(input: ExpansionInput): Expansion {
  const found = expansion(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

describe('expansion', () => {
  // Engineering handbook page on ethylene glycol, worked example (problem and formula read; 0.03685 computed): 0.8 m³ of
  // 50 mass % whose density falls from 1090 to 1042 kg/m³.
  it('the handbook example: 0.037 m³', () => {
    expect(expandedByL(0.8, { before: 1090, after: 1042 })).toBeCloseTo(0.03685, 5);
  });
  it('gives the larger of the two published', () => {
    const found = expansionOf({ glycol: 'ethylene', volumePercent: 50, volumeL: 7, fromC: 20, toC: 90 });
    const ashrae = 100 * (1.07335 / 1.03095 - 1);
    const massShare = FREEZING_CURVE.ethylene.massPercentOfVolume(50) / 100;
    const before = densityKgPerL('ethylene', { tempC: 20, massFraction: massShare });
    const melinder = 100 * (before / densityKgPerL('ethylene', { tempC: 90, massFraction: massShare }) - 1);
    expect(found.expansionPercent).toBeCloseTo(Math.max(ashrae, melinder), 9);
    expect(Math.abs(ashrae - melinder)).toBeLessThan(found.uncertaintyPercent);
    expect(found.expansionL).toBeCloseTo((7 * found.expansionPercent) / 100, 9);
  });
  it.each([
    [0.5, 'enough'],
    [0.32, 'unsure'],
    [0.31, 'unsure'],
    [0.2, 'too-small'],
  ])('a tank with %d L of space: %s', (tankSpaceL, verdict) => {
    const found = expansionOf({ glycol: 'ethylene', volumePercent: 50, volumeL: 7, fromC: 20, toC: 90, tankSpaceL });
    expect(found.tank?.verdict).toBe(verdict);
    expect(found.warnings.length).toBe(verdict === 'enough' ? 0 : 1);
  });
  it.each([
    [{ toC: 100.5 }, 'outside-published-range', 'toC', 100],
    [{ fromC: 105 }, 'outside-published-range', 'fromC', 100],
    [{ volumeL: -1 }, 'meaningless-value', 'volumeL', 0],
    [{ tankSpaceL: -1 }, 'meaningless-value', 'tankSpaceL', 0],
    [{ volumePercent: 70 }, 'beyond-table', 'volumePercent', 60],
  ])('refuses %j', (fields, code, field, limit) => {
    const input = { glycol: 'ethylene' as const, volumePercent: 50, volumeL: 7, fromC: 20, toC: 90 };
    expect(expansion({ ...input, ...fields })).toMatchObject({ ok: false, problem: { code, field, limit } });
  });
  it('refuses slush', () => {
    expect(expansion({ glycol: 'ethylene', volumePercent: 30, volumeL: 7, fromC: -30, toC: 90 })).toMatchObject({
      ok: false,
      problem: { code: 'below-freezing-point', field: 'fromC' },
    });
  });
  it('grows on warming, shrinks on cooling, and there and back is nothing', () => {
    const anyCase = fc.record({
      glycol: fc.constantFrom(...GLYCOLS),
      volumePercent: fc.integer(STEPS).map(evenly(10, 60)),
      fromC: fc.integer(STEPS).map(evenly(15, 50)),
      riseK: fc.integer(STEPS).map(evenly(1, 50)),
    });
    fc.assert(
      fc.property(anyCase, ({ glycol, volumePercent, fromC, riseK }) => {
        const warming = expansionOf({ glycol, volumePercent, volumeL: 1, fromC, toC: fromC + riseK }).expansionL;
        const cooling = expansionOf({ glycol, volumePercent, volumeL: 1 + warming, fromC: fromC + riseK, toC: fromC }).expansionL;
        expect(warming).toBeGreaterThan(0);
        expect(cooling).toBeLessThan(0);
        expect(Math.abs(warming + cooling)).toBeLessThan(0.01 * riseK * 0.05);
      }),
    );
  });
});

describe('properties', () => {
  it('of half and half at 80 °C lie where handbooks have them', () => {
    // ASHRAE (2001), 50 volume %, 80 °C (read): 1038.46 kg/m³, 3.512 kJ/(kg·K), 0.411 W/(m·K), 0.98 mPa·s.
    const found = coolantProperties({ glycol: 'ethylene', volumePercent: 50, tempC: 80 });
    if (!found.ok) throw new Error(found.problem.message);
    expect(found.densityKgPerL).toBeCloseTo(1.038, 1);
    expect(Math.abs(found.heatCapacityKJPerKgK - 3.512)).toBeLessThan(0.05);
    expect(Math.abs(found.conductivityWPerMK - 0.411)).toBeLessThan(0.01);
    expect(Math.abs(found.viscosityMPaS - 0.98)).toBeLessThan(0.1);
  });
  it('are refused above 100 °C and below the freezing point', () => {
    expect(coolantProperties({ glycol: 'ethylene', volumePercent: 50, tempC: 101 })).toMatchObject({ ok: false, problem: { limit: 100 } });
    expect(coolantProperties({ glycol: 'ethylene', volumePercent: 20, tempC: -20 })).toMatchObject({
      ok: false,
      problem: { code: 'below-freezing-point' },
    });
  });
});

describe('heat carrying', () => {
  it('stronger carries less, is thicker and passes heat on worse', () => {
    const found = heatCarrying({ glycol: 'ethylene', volumePercent: 57 });
    if (!found.ok) throw new Error(found.problem.message);
    const [water, half, own] = found.rows;
    expect(water).toMatchObject({ fluid: 'water', heatPerLitreRatio: 1, viscosityRatio: 1, heatPassingRatio: 1 });
    expect(half?.heatPerLitreRatio).toBeLessThan(1);
    expect(own?.heatPerLitreRatio).toBeLessThan(half?.heatPerLitreRatio ?? 0);
    expect(own?.viscosityRatio).toBeGreaterThan(half?.viscosityRatio ?? Infinity);
    expect(own?.heatPassingRatio).toBeLessThan(half?.heatPassingRatio ?? 0);
    // Water at 80 °C: 971.8 kg/m³ × 4.197 kJ/(kg·K) = 4.079 kJ/(L·K); viscosity 0.354 mPa·s (CRC Handbook, from memory).
    expect(water?.heatPerLitreKJPerK).toBeCloseTo(4.08, 2);
    expect(water?.viscosityMPaS).toBeCloseTo(0.354, 1);
  });
  it('refuses a temperature at which water is ice', () => {
    expect(heatCarrying({ glycol: 'ethylene', volumePercent: 50, tempC: -10 })).toMatchObject({ ok: false, problem: { limit: 0 } });
  });
});
