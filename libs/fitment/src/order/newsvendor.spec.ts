import { describe, expect, it } from '@jest/globals';
import { FitmentInputError } from '../fitment-input-error.ts';
import { criticalRatio } from './newsvendor.ts';
import { shelfQuantity, type Demand } from './shelf-quantity.ts';

describe('worked newsvendor cases from textbooks (figures read; the triangular quantity computed)', () => {
  it.each([
    ['programmes at 1.25, sold at 5.00, worthless after', { purchasePrice: 1.25, salePrice: 5, refund: 0 }, 0.75],
    ['bought at 7.50, sold at 10, refund 2.50', { purchasePrice: 7.5, salePrice: 10, refund: 2.5 }, 1 / 3],
    ['bought at 14, sold at 20, refund 5', { purchasePrice: 14, salePrice: 20, refund: 5 }, 0.4],
  ])('%s', (_, piece, ratio) => {
    expect(criticalRatio(piece)).toBeCloseTo(ratio, 12);
  });

  it.each<[Demand, number, number, number]>([
    [{ kind: 'triangular', low: 100, mode: 175, high: 300 }, 1 / 3, 170.7, 1],
    [{ kind: 'uniform', low: 80, high: 150 }, 0.4, 108, 9],
    [{ kind: 'normal', mean: 115, standardDeviation: 15 }, 0.4, 111.2, 1],
  ])('%p', (demand, ratio, quantity, digits) => {
    expect(shelfQuantity(ratio, demand)).toBeCloseTo(quantity, digits);
  });

  it('takes the right branch of a triangle above its mode: half of the upper half', () => {
    expect(shelfQuantity(0.875, { kind: 'triangular', low: 0, mode: 1, high: 2 })).toBeCloseTo(1.5, 12);
  });
});

describe('refusals', () => {
  it.each([
    [{ purchasePrice: 10, salePrice: 20, refund: 10 }, 'keeping one costs nothing'],
    [{ purchasePrice: 10, salePrice: 10, refund: 1 }, 'none is worth keeping'],
    [{ purchasePrice: -1, salePrice: 10, refund: 0 }, 'The purchase price is -1'],
  ])('%p', (piece, words) => {
    expect(() => criticalRatio(piece)).toThrow(words);
  });

  it('refuses demand that does not rise', () => {
    expect(() => shelfQuantity(0.5, { kind: 'uniform', low: 5, high: 4 })).toThrow(FitmentInputError);
    expect(() => shelfQuantity(1, { kind: 'uniform', low: 4, high: 5 })).toThrow(FitmentInputError);
  });
});
