import { describe, expect, it } from '@jest/globals';
import { readColumns } from './read-columns.ts';

describe('which column holds what', () => {
  it.each([
    ['coolant=Temp 1, time=2', { coolant: 'Temp 1', time: '2' }],
    ['{"coolant":3}', { coolant: 3 }],
    [{ speed: 'GPS Speed' }, { speed: 'GPS Speed' }],
    ['coolant=A=B', { coolant: 'A=B' }],
  ])('is understood: %j', (raw, columns) => {
    expect(readColumns(raw)).toEqual(columns);
  });

  it.each(['coolant', 'colour=A', '{"coolant":', '[]', [], 7, { coolant: {} }, '__proto__=A', ''])('is not: %j', (raw) => {
    expect(readColumns(raw)).toBeNull();
  });
});
