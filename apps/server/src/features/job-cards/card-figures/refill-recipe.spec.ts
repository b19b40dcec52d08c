import { describe, expect, it } from '@jest/globals';
import type { CardProduct } from '../card-known.ts';
import { refillRecipe, type RefillQuestion } from './refill-recipe.ts';

const product: CardProduct = {
  name: 'Test coolant',
  glycol: 'ethylene',
  technology: 'organic',
  approval: '',
  isReadyMixed: false,
  label: { partsProduct: 1, partsWater: 1, freezingPointC: -37 },
  minimumPercent: 33,
  maximumPercent: 60,
};
const question: RefillQuestion = {
  capacityL: 7,
  drainedL: 3,
  missingL: 1,
  keptL: 0,
  filledBeforeL: 0,
  residual: { volumePercent: 33 },
  product,
  target: { coldestAirC: -20, marginK: 5 },
  jugMl: 2000,
  markMl: 50,
};

const ready = (changes: Partial<RefillQuestion> = {}) => {
  const found = refillRecipe({ ...question, ...changes });
  if (found.kind !== 'ready') throw new Error(JSON.stringify(found));
  return found;
};

describe('refillRecipe', () => {
  it('fills what was missing on arrival as well as what was drained', () => {
    const { recipe } = ready();
    expect(recipe.spaceL).toBe(4);
    expect(recipe.residualL).toBe(3);
    expect(recipe.additiveL + recipe.waterL).toBeCloseTo(4 + recipe.shrinkL, 6);
  });

  it('counts the kept coolant as staying in and pours it first', () => {
    const { recipe, jugs } = ready({ keptL: 2.5 });
    expect(recipe.spaceL).toBe(1.5);
    expect(jugs.slice(0, 2)).toEqual([
      { productMl: 0, waterMl: 0, keptMl: 2000 },
      { productMl: 0, waterMl: 0, keptMl: 500 },
    ]);
  });

  it('leaves out what went in before the system was opened again', () => {
    expect(ready({ drainedL: 6, filledBeforeL: 4 }).recipe.spaceL).toBe(3);
  });

  it('pours whole marks, no jug fuller than it holds', () => {
    for (const { productMl, waterMl, keptMl } of ready().jugs) {
      expect((productMl + waterMl + keptMl) % 50).toBe(0);
      expect(productMl + waterMl + keptMl).toBeLessThanOrEqual(2000);
    }
  });

  it.each([
    ['capacity', { capacityL: null }, ['capacity']],
    ['what was drained', { drainedL: null }, ['drained']],
    ['the strength of what stays', { residual: null }, ['strength']],
    ['a product', { product: null }, ['product']],
    ['the label of a ready-mixed product', { product: { ...product, isReadyMixed: true, label: null } }, ['label']],
    ['everything', { capacityL: null, drainedL: null, residual: null, product: null }, ['capacity', 'drained', 'product']],
  ])('asks for %s and makes nothing up', (_what, changes, missing) => {
    expect(refillRecipe({ ...question, ...changes })).toEqual({ kind: 'asks', missing });
  });

  it('needs no strength where nothing stays in', () => {
    expect(ready({ drainedL: 6, residual: null }).recipe.residualL).toBe(0);
  });

  it('says how much more to drain where the target can’t be reached', () => {
    const refused = refillRecipe({ ...question, drainedL: 0.2, missingL: 0 });
    expect(refused).toMatchObject({ kind: 'refused', why: expect.stringContaining('in total') });
  });

  it('says so where the figures leave no space', () => {
    expect(refillRecipe({ ...question, drainedL: 1, missingL: 0, keptL: 1 })).toMatchObject({ kind: 'refused' });
  });
});
