import { describe, expect, it } from '@jest/globals';
import { celsiusToFahrenheit, psiToKPa } from '#libs/units';
import fc from 'fast-check';
import { type Glycol } from '../glycol.ts';
import { atmosphereKPa } from './atmosphere.ts';
import { boiling, type Boiling, type BoilingInput } from './boiling.ts';
import { mixtureBoilingPointC } from './mixture-boiling-point.ts';
import { saturationK, saturationMPa } from './saturation.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

function boilingOf(input: BoilingInput): Boiling {
  const found = boiling(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

// IAPWS R7-97(2012), Tables 35 and 36 (read).
describe('vapour pressure of water', () => {
  it.each([
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])('Table 35: %d K, %d MPa', (tempK, printed) => {
    expect(Math.abs(saturationMPa(tempK) / printed - 1)).toBeLessThan(1e-8);
  });
  it.each([
    [0.1, 0.372755919e3],
    [1, 0.453035632e3],
    [10, 0.584149488e3],
  ])('Table 36: %d MPa, %d K', (pressureMPa, printed) => {
    expect(Math.abs(saturationK(pressureMPa) / printed - 1)).toBeLessThan(1e-8);
  });
  it('forward and backward agree', () => {
    fc.assert(
      fc.property(fc.integer(STEPS).map(evenly(273.15, 647)), (tempK) => {
        expect(Math.abs(saturationK(saturationMPa(tempK)) - tempK)).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('standard atmosphere', () => {
  // Tables of the standard atmosphere in I-P units derived from ASHRAE's formula and from US Std Atm 1976 (read). The
  // row of 4000 ft is left out: its 12.682 psia is a misprint for 12.692.
  it.each([
    [-1524, 17.554],
    [-304.8, 15.236],
    [-152.4, 14.966],
    [0, 14.696],
    [152.4, 14.43],
    [304.8, 14.175],
    [609.6, 13.664],
    [914.4, 13.173],
    [1524, 12.23],
    [1828.8, 11.778],
    [2133.6, 11.341],
    [2438.4, 10.914],
    [2743.2, 10.506],
    [3048, 10.108],
    [4572, 8.296],
    [6096, 6.758],
  ])('%d m: %d psia', (altitudeM, psia) => {
    expect(Math.abs(atmosphereKPa(altitudeM) - psiToKPa(psia))).toBeLessThan(psiToKPa(0.006));
  });
  // US Standard Atmosphere 1976, layer bases (read); ISO 2533 (from memory).
  it.each([
    [0, 101325],
    [11000, 22632.1],
    [500, 95461.3],
    [1000, 89874.6],
    [2000, 79495.2],
    [3000, 70108.5],
    [4000, 61640.2],
  ])('%d m: %d Pa', (altitudeM, pressurePa) => {
    expect(Math.abs((atmosphereKPa(altitudeM) * 1000) / pressurePa - 1)).toBeLessThan(1e-5);
  });
});

// MEGlobal ethylene glycol data sheet (2008), Antoine constants by mass %, log10(mmHg), °C; quoted in a public program (read).
const ANTOINE_BY_MASS_PERCENT: readonly (readonly [number, number, number, number])[] = [
  [0, 7.96682, 1668.21, 228],
  [50, 7.901886, 1691.452, 229.778],
  [70, 7.83338, 1712.369, 231.166],
  [80, 7.775839, 1736.188, 232.689],
  [90, 7.685032, 1792.464, 235.836],
  [95, 7.856193, 2019.846, 251.898],
  [97, 8.123192, 2273.083, 267.91],
  [98, 8.3841, 2493.364, 279.584],
];

describe('boiling of ethylene glycol mixtures', () => {
  it.each(ANTOINE_BY_MASS_PERCENT)('at %d mass %% within 1 K of the maker data sheet', (massPercent, a, b, c) => {
    const absoluteKPa = 101.325;
    const printedC = b / (a - Math.log10((absoluteKPa * 760) / 101.325)) - c;
    expect(Math.abs(mixtureBoilingPointC('ethylene', massPercent / 100, { absoluteKPa }) - printedC)).toBeLessThanOrEqual(1);
  });
  // Automotive textbook site and technician's answers (read): 50 % boils at 265 °F under a 15 psi cap.
  it('50 volume % under 15 psi: 265 °F ± 2 °C', () => {
    const { boilingPointC } = boilingOf({ glycol: 'ethylene', volumePercent: 50, capGaugeKPa: psiToKPa(15) });
    expect(Math.abs(celsiusToFahrenheit(boilingPointC) - 265)).toBeLessThanOrEqual(3.6);
  });
  // Technician's answers (read): 50 % boils at 225 °F with the cap open.
  it('50 volume % open: 225 °F ± 2 °C', () => {
    const { boilingPointC } = boilingOf({ glycol: 'ethylene', volumePercent: 50 });
    expect(Math.abs(celsiusToFahrenheit(boilingPointC) - 225)).toBeLessThanOrEqual(3.6);
  });
  it('pure propylene glycol boils at the accepted 188 °C', () => {
    expect(mixtureBoilingPointC('propylene', 0.999999, { absoluteKPa: 101.325 })).toBeCloseTo(188, 0);
  });
});

describe('call', () => {
  it('says its defaults', () => {
    const found = boilingOf({ glycol: 'ethylene', volumePercent: 0 });
    expect(found).toMatchObject({ altitudeM: 0, capGaugeKPa: 0, absolutePressureKPa: 101.325, marginK: null });
    expect(found.boilingPointC).toBeCloseTo(99.974, 2);
    expect(found.assumptions).toContain('Altitude: 0 m, assumed.');
    expect(found.assumptions).toContain('Cap: open (0 kPa), assumed.');
  });
  it('the measured cap beats the printed one', () => {
    const printed = boilingOf({ glycol: 'ethylene', volumePercent: 50, capGaugeKPa: 140 });
    const measured = boilingOf({ glycol: 'ethylene', volumePercent: 50, capGaugeKPa: 140, capMeasuredKPa: 60 });
    expect(measured.capGaugeKPa).toBe(60);
    expect(measured.boilingPointC).toBeLessThan(printed.boilingPointC);
  });
  it('tells the margin over the hottest expected', () => {
    const found = boilingOf({ glycol: 'ethylene', volumePercent: 50, hottestExpectedC: 105 });
    expect(found.marginK).toBeCloseTo(found.boilingPointC - 105, 12);
    expect(found.warnings.map(({ code }) => code)).toEqual(['margin-small']);
  });
  it('above the table end it boils at least as the end does', () => {
    const end = boilingOf({ glycol: 'ethylene', volumePercent: 57.8 });
    const beyond = boilingOf({ glycol: 'ethylene', volumePercent: 59 });
    expect(beyond.boilingPointC).toBe(end.boilingPointC);
    expect(beyond.warnings.map(({ code }) => code)).toEqual(['at-least']);
  });
  it.each([
    [{ altitudeM: 11001 }, 'outside-published-range', 'altitudeM'],
    [{ capGaugeKPa: -1 }, 'meaningless-value', 'capGaugeKPa'],
    [{ capGaugeKPa: 301 }, 'outside-published-range', 'capGaugeKPa'],
    [{ capMeasuredKPa: Number.NaN }, 'not-a-number', 'capMeasuredKPa'],
    [{ hottestExpectedC: 900 }, 'meaningless-value', 'hottestExpectedC'],
  ])('refuses %j', (fields, code, field) => {
    expect(boiling({ glycol: 'ethylene', volumePercent: 50, ...fields })).toMatchObject({ ok: false, problem: { code, field } });
  });
  it('refuses beyond the table', () => {
    expect(boiling({ glycol: 'ethylene', volumePercent: 65 })).toMatchObject({ ok: false, problem: { code: 'beyond-table' } });
  });
  it('more glycol, more pressure and less altitude never boil colder', () => {
    const anyGlycol = fc.constantFrom<Glycol>('ethylene', 'propylene');
    const percent = fc.integer(STEPS).map(evenly(0, 59));
    fc.assert(
      fc.property(anyGlycol, percent, fc.integer(STEPS).map(evenly(0, 200)), (glycol, volumePercent, capGaugeKPa) => {
        const base = boilingOf({ glycol, volumePercent, capGaugeKPa, altitudeM: 1000 });
        const slack = 1e-9;
        expect(boilingOf({ glycol, volumePercent: volumePercent + 1, capGaugeKPa, altitudeM: 1000 }).boilingPointC).toBeGreaterThan(
          base.boilingPointC - slack,
        );
        expect(boilingOf({ glycol, volumePercent, capGaugeKPa: capGaugeKPa + 10, altitudeM: 1000 }).boilingPointC).toBeGreaterThan(
          base.boilingPointC,
        );
        expect(boilingOf({ glycol, volumePercent, capGaugeKPa, altitudeM: 500 }).boilingPointC).toBeGreaterThan(base.boilingPointC);
      }),
    );
  });
});
