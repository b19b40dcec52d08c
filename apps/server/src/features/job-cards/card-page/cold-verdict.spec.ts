import { describe, expect, it } from '@jest/globals';
import { coldVerdict, PRESSURE_SIGNS } from './cold-verdict.ts';

const reading = { tempC: 47.5, expandedUncertaintyC: 2, method: 'contact', onBareMetal: false, ...PRESSURE_SIGNS.soft } as const;

describe('coldVerdict', () => {
  it('says cold enough without saying it twice', () => {
    expect(coldVerdict(reading)).toEqual({
      verdict: 'fits',
      word: 'Cold enough',
      sum: '47.5 + 2.0 = 49.5, at most 50. No pressure.',
    });
  });

  it('is not sure where the instrument reaches across the limit', () => {
    expect(coldVerdict({ ...reading, expandedUncertaintyC: 4 })).toMatchObject({ verdict: 'inconclusive', word: 'Not sure yet' });
  });

  it('takes no reading for an answer under pressure', () => {
    expect(coldVerdict({ ...reading, tempC: 20, ...PRESSURE_SIGNS.hard })).toMatchObject({
      verdict: 'does-not-fit',
      word: 'Under pressure',
    });
    expect(coldVerdict({ ...reading, tempC: 20, ...PRESSURE_SIGNS.unsure })).toMatchObject({ word: 'Under pressure' });
  });

  it('says too hot, and what to do', () => {
    expect(coldVerdict({ ...reading, tempC: 70 })).toEqual({
      verdict: 'does-not-fit',
      word: 'Too hot to open',
      sum: '70.0 °C, the limit is 50. Let it cool.',
    });
  });
});
