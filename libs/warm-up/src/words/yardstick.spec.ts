import { describe, expect, it } from '@jest/globals';
import { celsiusToFahrenheit, fahrenheitDegreesToKelvin, fahrenheitToCelsius } from '#libs/units';
import { analyseWarmUp } from '../analyse-warm-up.ts';
import { type Sample } from '../types/sample.ts';
import { warmedUpC, YARDSTICK_K } from '../verdict/warmed-up.ts';

const climb = (change: Partial<Sample>): Sample[] =>
  Array.from({ length: 1500 }, (_, timeS) => ({
    timeS,
    coolantC: Math.min(88, 15 + timeS * 0.1),
    speedKmh: 60,
    intakeC: 16,
    ambientC: 15,
    ...change,
  }));

// 13 CCR 1968.2 (e)(10), second-hand: within 20 °F (11 °C) of the nominal temperature; no judgement below 20 °F (−7 °C) outside.
describe('the 11 °C yardstick', () => {
  it('is a difference: 20 °F of difference is 11.1 °C, 20 °F on the thermometer is −6.7 °C', () => {
    expect(fahrenheitDegreesToKelvin(20)).toBeCloseTo(11.1, 1);
    expect(fahrenheitToCelsius(20)).toBeCloseTo(-6.7, 1);
    expect(YARDSTICK_K).toBe(11);
    expect(warmedUpC(88)).toBe(77);
    expect(celsiusToFahrenheit(88) - celsiusToFahrenheit(warmedUpC(88))).toBeCloseTo(19.8, 9);
  });

  it('shows threshold, time and conditions beside the verdict', () => {
    const { yardstick } = analyseWarmUp({ samples: climb({}), nominalOpeningC: 88 });
    expect(yardstick).toMatchObject({ nominalC: 88, thresholdC: 77, within11C: true, conditionsMet: true });
    expect(yardstick?.reachedAfterS).toBeCloseTo(620, -1);
    expect(yardstick?.conditions).toHaveLength(4);
  });

  it.each([
    ['deep cold', { ambientC: -12, intakeC: -10 }, /outside/],
    ['idling', { speedKmh: 0 }, /idle/],
    ['a warm start', { intakeC: 40 }, /hot restart/],
  ])('says which condition does not hold: %s', (_, change, condition) => {
    const { yardstick } = analyseWarmUp({ samples: climb(change), nominalOpeningC: 88 });
    expect(yardstick?.conditionsMet).toBe(false);
    expect(
      yardstick?.conditions
        .filter(({ met }) => met === false)
        .map((one) => one.condition)
        .join(),
    ).toMatch(condition);
  });

  it('needs a nominal temperature', () => {
    expect(analyseWarmUp({ samples: climb({}) }).yardstick).toBeNull();
  });
});
