import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { recipe } from '#libs/coolant';
import { pouredStrength } from './poured-strength.ts';

describe('pouredStrength', () => {
  // The recipe solves for the amounts, this mixes them: both must meet at the target.
  it('gives the target when exactly the recipe is poured', () => {
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
      }),
    );
  });

  it('passes on why a strength can’t be told', () => {
    const found = pouredStrength({
      glycol: 'ethylene',
      residualL: 3,
      residual: { freezingPointC: -80 },
      additive: { massPercent: 93 },
      additiveL: 1,
      waterL: 1,
    });
    expect(found).toMatchObject({ ok: false, problem: { code: 'beyond-table' } });
  });
});
