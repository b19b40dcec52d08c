import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readNumber, textBehindNumber } from './read-number.ts';

const read = (text: string, decimalMark: '.' | ',' = '.', suffix = ''): number =>
  readNumber(text, { start: 0, end: text.length }, { decimalMark, suffix });

describe('numbers in cells', () => {
  it.each([
    ['25.000000', 25],
    ['-13', -13],
    ['+7.5', 7.5],
    ['.5', 0.5],
    ['1.51336E+12', 1.51336e12],
    ['2e-3', 0.002],
    ['39.099998000000001', 39.099998],
  ])('%s', (text, value) => {
    expect(read(text)).toBeCloseTo(value, 9);
  });

  it.each(['', '-', 'N/A', 'NODATA', '7B', '12abc', '1.2.3', '07:03', '--5'])('%p is none', (text) => {
    expect(read(text)).toBeNaN();
  });

  it('takes a decimal comma and one known unit behind', () => {
    expect(read('74,50%', ',', '%')).toBe(74.5);
    expect(read('82C', '.', 'C')).toBe(82);
    expect(read('82 km/h', '.', 'km/h')).toBe(82);
    expect(read('82F', '.', 'C')).toBeNaN();
    expect(textBehindNumber('48km/h')).toBe('km/h');
    expect(textBehindNumber('none')).toBeNull();
  });

  it('reads every number that the language writes, exactly', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(read(value.toFixed(6))).toBe(Number(value.toFixed(6)));
      }),
    );
  });
});
