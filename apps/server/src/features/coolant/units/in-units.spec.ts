import { describe, expect, it } from '@jest/globals';
import { METRIC_UNITS, US_UNITS } from '#libs/units';
import { inUnits } from './in-units.ts';

describe('inUnits', () => {
  it('leaves a metric person’s sentence as it is', () => {
    const text = 'Safe to \u221236 °C with 2.00 L under 110 kPa, 5 K in hand.';
    expect(inUnits(text, METRIC_UNITS)).toBe(text);
  });

  it.each([
    ['Safe to \u221236 °C only.', 'Safe to \u221232.8 °F only.'],
    ['Only 5 K above the hottest expected 120 °C.', 'Only 9 °F above the hottest expected 248 °F.'],
    ['4.00 L are to fill.', '4.23 US qt are to fill.'],
    ['Cap: 110 kPa above the air.', 'Cap: 16 psi above the air.'],
    ['0 to 40 °C', '32 to 104 °F'],
    ['chloride 40 mg/L, 50 mass %, 110 mL', 'chloride 40 mg/L, 50 mass %, 110 mL'],
  ])('%s', (text, expected) => expect(inUnits(text, US_UNITS)).toBe(expected));

  // A protection rounded towards warmer must not be rounded colder on the way: whole °C are exact in tenths of °F.
  it('never makes a protection colder', () => {
    for (let tempC = -60; tempC <= 0; tempC += 1) {
      const said = Number(inUnits(`${tempC} °C`, US_UNITS).replace('\u2212', '-').replace(' °F', ''));
      expect(said).toBeCloseTo(tempC * 1.8 + 32, 9);
    }
  });
});
