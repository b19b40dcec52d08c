import { describe, expect, it } from '@jest/globals';
import { analyseWarmUp } from '../analyse-warm-up.ts';
import { readTypedReadings } from './read-typed-readings.ts';

describe('figures taken by hand', () => {
  it('takes minutes with or without seconds, decimal commas and units', () => {
    expect(readTypedReadings('0 18\n1:30 27 °C\n\n3;36,5\n4,5 min  44')).toEqual({
      ok: true,
      samples: [
        { timeS: 0, coolantC: 18 },
        { timeS: 90, coolantC: 27 },
        { timeS: 180, coolantC: 36.5 },
        { timeS: 270, coolantC: 44 },
      ],
    });
  });

  it.each([
    ['0 18\nwarm', /Line 2/],
    ['0 18\n2 30\n1 40\n3 50', /Line 3.*later/],
    ['0 18\n1 27', /At least 4/],
  ])('%p: says which line', (text, problem) => {
    expect(readTypedReadings(text)).toMatchObject({ ok: false, problem: expect.stringMatching(problem) });
  });

  it('shows a knee from one reading a minute', () => {
    const text = Array.from({ length: 26 }, (_, minute) => `${minute} ${Math.round(Math.min(88, 20 + 6 * minute))}`).join('\n');
    const typed = readTypedReadings(text);
    if (!typed.ok) throw new Error(typed.problem);
    const { verdict, openingC } = analyseWarmUp({ samples: typed.samples, nominalOpeningC: 88 });
    expect(['normal', 'not-enough']).toContain(verdict);
    if (openingC) expect(Math.abs(openingC.estimate - 88)).toBeLessThanOrEqual(2);
  });
});
