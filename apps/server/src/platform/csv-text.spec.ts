import { describe, expect, it } from '@jest/globals';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { csvText } from './csv-text.ts';

describe('csvText', () => {
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '"=1', '|calc', '%x', "'=1"])('makes text of %j', (text) => {
    const [[cell = '']] = parse(csvText([[text]])) as [string[]];
    expect(cell).toBe(`'${text}`);
  });

  it('leaves figures as they are, with their sign', () => {
    expect(csvText([['Quill, Odile', { figure: '-2.50' }, { figure: '120' }]])).toBe('"Quill, Odile",-2.50,120\r\n');
    expect(() => csvText([[{ figure: '=1' }]])).toThrow('no figure');
  });

  it('is read back by another reader, whatever was typed', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
        (rows) => {
          fc.pre(rows.every((row) => row.length === rows[0]?.length && row.some((cell) => cell !== '')));
          const runs = (cell: string): boolean => /^[\s'"]*[=+\-@\t\r|%]/.test(cell);
          expect(parse(csvText(rows), { record_delimiter: '\r\n' })).toEqual(
            rows.map((row) => row.map((cell) => (runs(cell) ? `'${cell}` : cell))),
          );
        },
      ),
    );
  });
});
