import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  METRIC_UNITS,
  US_UNITS,
  formatFigure,
  formatLength,
  formatPressure,
  formatTemperature,
  formatTemperatureDifference,
  formatTorque,
  formatVolume,
  shownLength,
  shownPressure,
  shownTemperature,
  shownTemperatureDifference,
  shownTorque,
  shownVolume,
  typedLength,
  typedPressure,
  typedTemperature,
  typedTemperatureDifference,
  typedTorque,
  typedVolume,
} from './index.ts';

describe('formatFigure', () => {
  it('uses the minus sign U+2212, not a hyphen', () => {
    expect(formatFigure(-18, 0)).toBe('\u221218');
  });
  it('never shows minus nothing', () => {
    expect(formatFigure(-0.04, 1)).toBe('0.0');
    expect(formatFigure(-0, 0)).toBe('0');
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) => {
    expect(() => formatFigure(value, 1)).toThrow(RangeError);
  });
  it('holds no hyphen whatever the number', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        expect(formatFigure(value, 2)).not.toContain('-');
      }),
    );
  });
});

describe('quantities', () => {
  it('metric first', () => {
    expect(formatTemperature(-36.4, { unit: METRIC_UNITS.temperature })).toBe('\u221236 °C');
    expect(formatTemperatureDifference(5, { unit: '°C' })).toBe('5 K');
    expect(formatVolume(2.156, { unit: METRIC_UNITS.volume })).toBe('2.16 L');
    expect(formatPressure(140, { unit: METRIC_UNITS.pressure })).toBe('140 kPa');
    expect(formatTorque(12, { unit: METRIC_UNITS.torque })).toBe('12 Nm');
    expect(formatLength(54, { unit: METRIC_UNITS.length })).toBe('54.0 mm');
  });
  it('US by choice', () => {
    expect(formatTemperature(-37, { unit: US_UNITS.temperature })).toBe('\u221235 °F');
    expect(formatTemperatureDifference(5, { unit: '°F' })).toBe('9 °F');
    expect(formatVolume(3.785411784, { unit: US_UNITS.volume })).toBe('4.00 US qt');
    expect(formatPressure(103.42135939752542, { unit: US_UNITS.pressure })).toBe('15.0 psi');
    expect(formatTorque(10, { unit: US_UNITS.torque, decimals: 1 })).toBe('7.4 lbf·ft');
    expect(formatLength(50.8, { unit: US_UNITS.length })).toBe('2.000 in');
  });
  it('bar', () => {
    expect(formatPressure(140, { unit: 'bar' })).toBe('1.40 bar');
  });
});

describe('what was typed is what was shown', () => {
  it('comes back in every unit', () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (value) => {
        for (const unit of ['°C', '°F'] as const) {
          expect(typedTemperature(shownTemperature(value, unit), unit)).toBeCloseTo(value, 9);
          expect(typedTemperatureDifference(shownTemperatureDifference(value, unit), unit)).toBeCloseTo(value, 9);
        }
        for (const unit of ['L', 'US qt'] as const) expect(typedVolume(shownVolume(value, unit), unit)).toBeCloseTo(value, 9);
        for (const unit of ['kPa', 'psi', 'bar'] as const) expect(typedPressure(shownPressure(value, unit), unit)).toBeCloseTo(value, 9);
        for (const unit of ['Nm', 'lbf·ft'] as const) expect(typedTorque(shownTorque(value, unit), unit)).toBeCloseTo(value, 9);
        for (const unit of ['mm', 'in'] as const) expect(typedLength(shownLength(value, unit), unit)).toBeCloseTo(value, 9);
      }),
    );
  });
});
