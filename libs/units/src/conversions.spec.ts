import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { KPA_PER_PSI, LITRES_PER_US_QUART, MILLIMETRES_PER_INCH, NEWTON_METRES_PER_POUND_FOOT } from './exact-factors.ts';
import {
  barToKPa,
  celsiusToFahrenheit,
  fahrenheitDegreesToKelvin,
  fahrenheitToCelsius,
  inchesToMillimetres,
  kelvinToFahrenheitDegrees,
  kPaToBar,
  kPaToPsi,
  litresToUsQuarts,
  millimetresToInches,
  newtonMetresToPoundFeet,
  poundFeetToNewtonMetres,
  psiToKPa,
  usQuartsToLitres,
} from './index.ts';

// The international avoirdupois pound, the yard of 1959 and standard gravity are exact by definition.
const POUND_KG = 0.45359237;
const GRAVITY = 9.80665;
const INCH_M = 0.0254;

describe('factors follow from the definitions', () => {
  it('US quart: 57.75 cubic inches', () => {
    expect(LITRES_PER_US_QUART).toBe(0.946352946);
    expect(57.75 * (INCH_M * 10) ** 3).toBeCloseTo(LITRES_PER_US_QUART, 14);
  });
  it('psi: pound-force per square inch', () => {
    expect((POUND_KG * GRAVITY) / INCH_M ** 2 / 1000).toBeCloseTo(KPA_PER_PSI, 14);
  });
  it('lbf·ft: pound-force at twelve inches', () => {
    expect(POUND_KG * GRAVITY * 12 * INCH_M).toBeCloseTo(NEWTON_METRES_PER_POUND_FOOT, 14);
    expect(NEWTON_METRES_PER_POUND_FOOT).toBe(Number('1.3558179483314004'));
  });
  it('inch: 25.4 mm', () => {
    expect(MILLIMETRES_PER_INCH).toBe(25.4);
  });
});

describe('known points', () => {
  it.each([
    [0, 32],
    [100, 212],
    [-40, -40],
    [-17.5, 0.5],
  ])('%d °C is %d °F', (tempC, tempF) => {
    expect(celsiusToFahrenheit(tempC)).toBe(tempF);
    expect(fahrenheitToCelsius(tempF)).toBe(tempC);
  });
  it('a difference carries no 32', () => {
    expect(kelvinToFahrenheitDegrees(10)).toBe(18);
    expect(fahrenheitDegreesToKelvin(18)).toBe(10);
  });
  it('four US quarts are one US gallon of 3.785411784 L', () => {
    expect(usQuartsToLitres(4)).toBe(3.785411784);
  });
  it('one bar is 14.5037738 psi', () => {
    expect(kPaToPsi(barToKPa(1))).toBeCloseTo(14.5037738, 7);
  });
});

describe('there and back', () => {
  const pairs: [string, (value: number) => number, (value: number) => number][] = [
    ['temperature', celsiusToFahrenheit, fahrenheitToCelsius],
    ['difference', kelvinToFahrenheitDegrees, fahrenheitDegreesToKelvin],
    ['volume', litresToUsQuarts, usQuartsToLitres],
    ['pressure in psi', kPaToPsi, psiToKPa],
    ['pressure in bar', kPaToBar, barToKPa],
    ['torque', newtonMetresToPoundFeet, poundFeetToNewtonMetres],
    ['length', millimetresToInches, inchesToMillimetres],
  ];
  it.each(pairs)('%s comes back', (_name, there, back) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        expect(Math.abs(back(there(value)) - value)).toBeLessThanOrEqual(1e-12 * Math.max(100, Math.abs(value)));
      }),
    );
  });
});
