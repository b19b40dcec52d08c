import { describe, expect, it } from '@jest/globals';
import { sayYardstick } from './yardstick-words.ts';

const MET = { condition: 'not a hot restart', met: true };

// 13 CCR 1968.2 (e)(10), second-hand: within 20 °F (11 °C) of the nominal temperature.
describe('the yardstick in words', () => {
  const said = (change: Partial<Parameters<typeof sayYardstick>[0]> = {}) =>
    sayYardstick({ nominalC: 88, thresholdC: 77, within11C: true, reachedAfterS: 620, conditions: [MET], conditionsMet: true, ...change });

  it('keeps a difference a difference: 20 °F is never said as −7 °C', () => {
    const { words } = said();
    expect(words).toContain('within 11 °C (20 °F) of the marked 88 °C, that is 77 °C or more');
    expect(words).toContain('came within it after 10 min 20 s');
    expect(words).not.toMatch(/[−-]7/);
  });

  it('is never called a verdict, least of all where its conditions did not hold', () => {
    const { words, conditions } = said({
      within11C: false,
      reachedAfterS: null,
      conditionsMet: false,
      conditions: [
        MET,
        { condition: 'not more than half of the time at idle', met: false },
        { condition: 'outside at the start', met: null },
      ],
    });
    expect(words).toContain('did not come within it');
    expect(words).toContain('it decides nothing here');
    expect(words).toContain('It is no verdict.');
    expect(conditions.map(({ peg }) => peg)).toEqual(['fits', 'does-not-fit', 'not-read']);
  });
});
