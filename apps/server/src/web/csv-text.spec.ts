import { describe, expect, it } from '@jest/globals';
import { csvText } from './csv-text.ts';

describe('csvText', () => {
  it('writes rows that a spreadsheet opens', () => {
    expect(
      csvText([
        ['a', 'b, c'],
        ['"d"', 'e\nf'],
      ]),
    ).toBe('\ufeffa,"b, c"\r\n"""d""","e\nf"\r\n');
  });

  it.each(['=1+1', '+1+1', '-1+1', '@SUM(A1)', '\t=1', '\r=1', '=cmd|x'])('takes the sting out of %j', (cell) => {
    expect(csvText([[cell]])).toContain(`'${cell}`);
  });

  it.each(['-4.50', '12', '0.10'])('leaves the number %s a number', (cell) => {
    expect(csvText([[cell]])).toBe(`\ufeff${cell}\r\n`);
  });
});
