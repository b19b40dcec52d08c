import { describe, expect, it } from '@jest/globals';
import { productFor } from '../index.ts';

const shelf = [
  { name: 'A', technology: 'organic' },
  { name: 'B', technology: 'hybrid' },
  { name: 'C', technology: 'hybrid' },
];

describe('productFor', () => {
  it.each([
    { technology: 'hybrid', name: 'B' },
    { technology: 'organic', name: 'A' },
    { technology: 'inorganic', name: 'A' },
    { technology: undefined, name: 'A' },
  ])('takes $name for a car whose technology is $technology', ({ technology, name }) => {
    expect(productFor(shelf, technology)?.name).toBe(name);
  });

  it('takes nothing from an empty shelf', () => {
    expect(productFor([], 'organic')).toBeNull();
  });
});
