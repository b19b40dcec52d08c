import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { BRIX } from '../data/brix.ts';
import { CRC_ETHYLENE } from '../spec-support/crc-ethylene.ts';
import { PROPYLENE_INDEX } from '../data/propylene-index.ts';
import { type Glycol } from '../glycol.ts';
import { densityKgPerL } from '../heat/density.ts';
import { FREEZING_CURVE } from '../strength/freezing-curve.ts';
import { hydrometer } from './hydrometer.ts';
import { refractiveIndex } from './refractive-index.ts';
import { refractometer, type RefractometerInput, type RefractometerResult } from './refractometer.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

function readOf(input: RefractometerInput): RefractometerResult {
  const found = refractometer(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

const codes = (input: RefractometerInput): readonly string[] => readOf(input).warnings.map(({ code }) => code);

// CRC Handbook, 102nd edition, ethylene glycol, 20 °C (read).
describe('refractive index of ethylene glycol', () => {
  it.each(CRC_ETHYLENE)('CRC at %d mass %% (density %d): %d', (massPercent, _density, printed) => {
    expect(Math.abs(refractiveIndex('ethylene', massPercent / 100) - printed)).toBeLessThan(1e-4);
  });
  it.each(CRC_ETHYLENE)('read backwards: %d mass %% (density %d) from the index %d', (massPercent, _density, printed) => {
    const found = refractometer({ glycol: 'ethylene', refractiveIndex: Math.min(printed, refractiveIndex('ethylene', 0.6)) });
    expect(found.ok && Math.abs((found.massPercent ?? 0) - massPercent)).toBeLessThan(0.12);
  });
});

describe('refractometer', () => {
  it('on its own °C scale the reading is the freezing point', () => {
    const found = readOf({ glycol: 'ethylene', scaleGlycol: 'ethylene', freezingPointC: -33.8 });
    expect(found).toMatchObject({ freezingPointC: -33.8, volumePercent: 47.6, massPercent: 50, overclaimK: 0, warnings: [] });
  });
  // Computed from the CRC fit and the propylene estimate: 11 K at 50 mass %, 5 K at 30 mass %. ASTM D3321 (read) speaks
  // of 10 K and more.
  it.each([
    [50, 11],
    [30, 5],
  ])('propylene at %d mass %% on an ethylene scale claims %d K too much', (massPercent, overclaimK) => {
    const index = refractiveIndex('propylene', massPercent / 100);
    const claimed = readOf({ glycol: 'ethylene', refractiveIndex: index }).freezingPointC;
    const found = readOf({ glycol: 'propylene', scaleGlycol: 'ethylene', freezingPointC: claimed });
    expect(found.massPercent).toBeCloseTo(massPercent, 6);
    expect(Math.abs((found.overclaimK ?? 0) - overclaimK)).toBeLessThan(0.5);
    expect(found.warnings.map(({ code }) => code)).toEqual(expect.arrayContaining(['wrong-scale', 'estimate']));
    expect(found.warnings[0]?.text).toContain('better protected than it is');
  });
  it('ethylene on a propylene scale claims too little', () => {
    const found = readOf({ glycol: 'ethylene', scaleGlycol: 'propylene', freezingPointC: -15 });
    expect(found.overclaimK).toBeLessThan(0);
    expect(found.freezingPointC).toBeLessThan(-15);
    expect(found.warnings[0]?.text).toContain('less protected than it is');
  });
  it('Brix goes by the sugar table', () => {
    const row = BRIX.find(({ brix }) => brix === 24);
    expect(readOf({ glycol: 'ethylene', brix: 24 }).refractiveIndex).toBe(row?.refractiveIndex);
    expect(readOf({ glycol: 'ethylene', brix: 0 }).massPercent).toBeCloseTo(0, 6);
  });
  it('warns where the scale is not known', () => {
    expect(codes({ glycol: 'propylene', freezingPointC: -20 })).toContain('scale-unknown');
  });
  it.each([
    [30, undefined, true],
    [30, true, false],
    [21, undefined, false],
    [undefined, undefined, false],
  ])('a sample at %s °C, compensated %s: warned %s', (sampleC, hasTemperatureCompensation, isWarned) => {
    const input = { glycol: 'ethylene' as const, refractiveIndex: 1.38, sampleC, hasTemperatureCompensation };
    expect(codes(input).includes('sample-not-at-20')).toBe(isWarned);
    expect(readOf(input).massPercent).toBe(readOf({ glycol: 'ethylene', refractiveIndex: 1.38 }).massPercent);
  });
  it.each([
    [{ refractiveIndex: 1.332 }, 'reading-off-scale'],
    [{ refractiveIndex: 1.4 }, 'reading-off-scale'],
    [{ refractiveIndex: 1 }, 'meaningless-value'],
    [{ brix: 60 }, 'reading-off-scale'],
    [{ brix: -1 }, 'meaningless-value'],
    [{ freezingPointC: -60 }, 'beyond-table'],
    [{ freezingPointC: -45, scaleGlycol: 'propylene' as const }, 'reading-off-scale'],
    [{}, 'exactly-one-needed'],
    [{ brix: 20, refractiveIndex: 1.38 }, 'exactly-one-needed'],
  ])('refuses %j', (fields, code) => {
    expect(refractometer({ glycol: 'ethylene', ...fields })).toMatchObject({ ok: false, problem: { code } });
  });
  it('index and strength are inverse to each other', () => {
    fc.assert(
      fc.property(fc.constantFrom<Glycol>('ethylene', 'propylene'), fc.integer(STEPS).map(evenly(0.001, 0.5999)), (glycol, w) => {
        expect(readOf({ glycol, refractiveIndex: refractiveIndex(glycol, w) }).massPercent).toBeCloseTo(w * 100, 6);
      }),
    );
  });
  it('the propylene estimate rises without a gap', () => {
    for (const [index, row] of PROPYLENE_INDEX.entries()) {
      expect(row.refractiveIndex).toBeGreaterThan(PROPYLENE_INDEX[index - 1]?.refractiveIndex ?? 1.33);
      expect(row.massPercent).toBe(index * 5);
    }
  });
});

describe('hydrometer', () => {
  // CRC Handbook, 102nd edition, density at 20 °C (read), over water at 20 °C.
  it.each(CRC_ETHYLENE)('%d mass %% weighs %d kg/L', (massPercent, densityAt20) => {
    const found = hydrometer({ glycol: 'ethylene', specificGravity: densityAt20 / 0.9982, sampleC: 20 });
    expect(found.ok && Math.abs((found.massPercent ?? 60) - massPercent)).toBeLessThan(1.3);
  });
  it('a warm sample weighs less and is read as what it is', () => {
    const reference = densityKgPerL('ethylene', { tempC: 20, massFraction: 0 });
    const gravity = densityKgPerL('ethylene', { tempC: 45, massFraction: 0.5 }) / reference;
    const warm = hydrometer({ glycol: 'ethylene', specificGravity: gravity, sampleC: 45 });
    const takenAs20 = hydrometer({ glycol: 'ethylene', specificGravity: gravity });
    expect(warm.ok && warm.massPercent).toBeCloseTo(50, 6);
    expect(takenAs20.ok && takenAs20.massPercent).toBeLessThan(45);
  });
  it('a scale against water at 15.6 °C reads lower', () => {
    const at20 = hydrometer({ glycol: 'ethylene', specificGravity: 1.06 });
    const at15 = hydrometer({ glycol: 'ethylene', specificGravity: 1.06, referenceC: 15.6 });
    expect(at15.ok && at20.ok && (at15.massPercent ?? 0) > (at20.massPercent ?? 0)).toBe(true);
  });
  it('tells how much the scale leaves open, and that propylene is told badly', () => {
    const ethylene = hydrometer({ glycol: 'ethylene', specificGravity: 1.068 });
    const propylene = hydrometer({ glycol: 'propylene', specificGravity: 1.038 });
    if (!ethylene.ok || !propylene.ok) throw new Error('both must be readable');
    expect(ethylene.volumePercentLow).toBeLessThan(ethylene.volumePercent);
    expect(ethylene.volumePercentHigh).toBeGreaterThan(ethylene.volumePercent);
    expect(ethylene.warmestFreezingPointC).toBeCloseTo(FREEZING_CURVE.ethylene.freezingPointC(ethylene.volumePercentLow), 9);
    expect(ethylene.warnings).toEqual([]);
    expect(propylene.warnings.map(({ code }) => code)).toEqual(['gravity-insensitive']);
  });
  it.each([
    [{ specificGravity: 0.99 }, 'reading-off-scale'],
    [{ specificGravity: 1.1 }, 'reading-off-scale'],
    [{ specificGravity: 0.5 }, 'meaningless-value'],
    [{ specificGravity: 1.05, sampleC: 80 }, 'outside-published-range'],
    [{ specificGravity: 1.05, gravityUncertainty: -1 }, 'meaningless-value'],
  ])('refuses %j', (fields, code) => {
    expect(hydrometer({ glycol: 'ethylene', ...fields })).toMatchObject({ ok: false, problem: { code } });
  });
});
