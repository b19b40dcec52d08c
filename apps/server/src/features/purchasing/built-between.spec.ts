import { describe, expect, it } from '@jest/globals';
import { builtBetween, monthsBetween } from './built-between.ts';

const day = (text: string): Date => new Date(`${text}T00:00:00Z`);

describe('builtBetween', () => {
  it.each([
    [2017, 3, '2017-03-01', '2017-03-31'],
    [2016, 2, '2016-02-01', '2016-02-29'],
    [2017, null, '2017-01-01', '2017-12-31'],
  ])('%d/%s', (buildYear, buildMonth, from, to) => {
    expect(builtBetween({ buildYear, buildMonth })).toEqual({ from: day(from), to: day(to) });
  });

  it('is open where the year is not known', () => {
    expect(builtBetween({ buildYear: null, buildMonth: null })).toEqual({ from: null, to: null });
  });
});

describe('monthsBetween', () => {
  it('runs to the end of the last month, and is open where nothing is typed', () => {
    expect(monthsBetween('2014-02', '2017-02')).toEqual({ from: day('2014-02-01'), to: day('2017-02-28') });
    expect(monthsBetween('', '2017-12')).toEqual({ from: null, to: day('2017-12-31') });
  });
});
