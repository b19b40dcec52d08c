import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { boiling, recipe } from '#libs/coolant';
import { liquidsToPour } from './liquids.ts';
import type { ReadyRefill } from './reckon-refill.ts';

function ready(drainedVolumeL: number | undefined, jug: { jugMl: number; markMl: number }): ReadyRefill | undefined {
  const found = recipe({
    glycol: 'ethylene',
    systemVolumeL: 9,
    drainedVolumeL,
    residual: { volumePercent: 30 },
    additive: { massPercent: 93 },
    target: { volumePercent: 38 },
    jugL: jug.jugMl / 1000,
    markMl: jug.markMl,
  });
  const open = boiling({ glycol: 'ethylene', volumePercent: 38 });
  if (!found.ok || !open.ok) return undefined;
  const { assumptions, warnings, sources } = found;
  return {
    kind: 'ready',
    recipe: found,
    productName: 'product',
    isReadyMixed: false,
    keptL: 0,
    boils: null,
    boilsOpen: open,
    assumptions,
    warnings,
    sources,
  };
}

describe('liquidsToPour', () => {
  it('fills each jug up to a mark, and all jugs together hold the rounded recipe', () => {
    const sizes = fc.record({ jugMl: fc.constantFrom(500, 1000, 2000, 2125, 5000), markMl: fc.constantFrom(10, 50, 100) });
    fc.assert(
      fc.property(fc.option(fc.integer({ min: 3, max: 8 }), { nil: undefined }), sizes, (drainedL, size) => {
        const answer = ready(drainedL, size);
        fc.pre(answer !== undefined);
        if (!answer) return;
        const rounded = answer.recipe.roundedJugs;
        const liquids = liquidsToPour(answer, size);
        const totalL = (key: string): number => liquids.find((liquid) => liquid.key === key)?.totalL ?? 0;
        expect(totalL('additive')).toBeCloseTo(rounded?.additiveL ?? 0, 9);
        expect(totalL('water')).toBeCloseTo(rounded?.waterL ?? 0, 9);
        for (const amountMl of liquids.flatMap(({ amountsMl }) => amountsMl)) {
          expect(amountMl).toBeLessThanOrEqual(size.jugMl);
          expect(Math.abs(amountMl / size.markMl - Math.round(amountMl / size.markMl))).toBeLessThan(1e-9);
        }
      }),
    );
  });
});
