import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { recipe } from '../recipe/recipe.ts';
import { pouredStrength } from './poured-strength.ts';

describe('pouredStrength', () => {
  // The recipe solves for the amounts, this mixes them: both must meet at the target.
  it('gives the target and fills the system when exactly the recipe is poured', () => {
    const share = fc.integer({ min: 5, max: 45 });
    fc.assert(
      fc.property(fc.constantFrom('ethylene' as const, 'propylene' as const), share, share, (glycol, before, target) => {
        const additive = { massPercent: 93 };
        const found = recipe({
          glycol,
          systemVolumeL: 7,
          drainedVolumeL: 5,
          residual: { massPercent: before },
          additive,
          target: { massPercent: target },
        });
        fc.pre(found.ok && found.way === 'mixed');
        if (!found.ok) return;
        const { additiveL, waterL } = found;
        const mixed = pouredStrength({ glycol, residualL: 2, residual: { massPercent: before }, additive, additiveL, waterL });
        expect(mixed.ok && mixed.massPercent).toBeCloseTo(target, 6);
        expect(mixed.ok && mixed.volumeL).toBeCloseTo(7, 6);
      }),
    );
  });

  const input = {
    glycol: 'ethylene' as const,
    residualL: 3,
    residual: { volumePercent: 30 },
    additive: { massPercent: 93 },
    additiveL: 1,
    waterL: 1,
  };

  it.each([
    [{ residual: { freezingPointC: -80 } }, 'beyond-table', undefined],
    [{ additiveL: -1 }, 'meaningless-value', 'additiveL'],
    [{ waterL: Number.NaN }, 'not-a-number', 'waterL'],
    [{ residualL: 0, additiveL: 0, waterL: 0 }, 'meaningless-value', 'additiveL'],
  ])('says why %j can’t be told', (change, code, field) => {
    expect(pouredStrength({ ...input, ...change })).toMatchObject({ ok: false, problem: { code, ...(field && { field }) } });
  });
});
