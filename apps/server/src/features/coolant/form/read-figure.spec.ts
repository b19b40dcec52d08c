import { describe, expect, it } from '@jest/globals';
import { readFigure } from './read-figure.ts';

describe('readFigure', () => {
  it.each([
    ['6.2', 6.2],
    ['6,2', 6.2],
    ['.5', 0.5],
    ['7.', 7],
    ['-18', -18],
    ['\u221218', -18],
    ['+3', 3],
    ['0', 0],
  ])('reads %s', (text, figure) => expect(readFigure(text)).toBe(figure));

  it.each(['', 'half', '1.000,5', '1e5', 'NaN', 'Infinity', '--1', '1 2', '12345678', '0x10', '-'])('takes “%s” for no figure', (text) =>
    expect(readFigure(text)).toBeUndefined(),
  );
});
