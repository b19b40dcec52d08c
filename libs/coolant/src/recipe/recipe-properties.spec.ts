import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Glycol } from '../glycol.ts';
import { densityAt20 } from '../strength/density-at-20.ts';
import { FREEZING_CURVE } from '../strength/freezing-curve.ts';
import { recipe } from './recipe.ts';
import { type Recipe, type RecipeInput } from './recipe.types.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';
import { roundToMarks } from './round-to-marks.ts';

const anyPartDrain = fc.record({
  glycol: fc.constantFrom<Glycol>('ethylene', 'propylene'),
  systemVolumeL: fc.integer(STEPS).map(evenly(1, 30)),
  drainedShare: fc.integer(STEPS).map(evenly(0, 1)),
  residualPercent: fc.integer(STEPS).map(evenly(0, 57)),
  additivePercent: fc.integer(STEPS).map(evenly(30, 100)),
  targetPercent: fc.integer(STEPS).map(evenly(0, 57)),
  jugL: fc.integer(STEPS).map(evenly(0.5, 10)),
});

type PartDrain = typeof anyPartDrain extends fc.Arbitrary<infer Value> ? Value : never;

function inputOf(drain: PartDrain): RecipeInput & { drainedVolumeL: number } {
  return {
    glycol: drain.glycol,
    systemVolumeL: drain.systemVolumeL,
    drainedVolumeL: drain.systemVolumeL * drain.drainedShare,
    residual: { volumePercent: drain.residualPercent },
    additive: { volumePercent: drain.additivePercent },
    target: { volumePercent: drain.targetPercent },
    jugL: drain.jugL,
  };
}

function forAll(check: (found: Recipe, drain: PartDrain) => void): void {
  let answered = 0;
  fc.assert(
    fc.property(anyPartDrain, (drain) => {
      const found = recipe(inputOf(drain));
      if (!found.ok) return;
      answered += 1;
      check(found, drain);
    }),
    { numRuns: 500 },
  );
  expect(answered).toBeGreaterThan(50);
}

describe('a recipe', () => {
  it('conserves the mass of glycol and of everything, and fills the system exactly', () => {
    forAll((found, { glycol, systemVolumeL, residualPercent }) => {
      const curve = FREEZING_CURVE[glycol];
      const residualFraction = curve.massPercentOfVolume(residualPercent) / 100;
      const additiveFraction = found.additiveMassPercent / 100;
      const resultFraction = (found.resultMassPercent ?? Number.NaN) / 100;
      const residualKg = found.residualL * densityAt20(glycol, residualFraction);
      const additiveKg = found.additiveL * densityAt20(glycol, additiveFraction);
      const resultKg = systemVolumeL * densityAt20(glycol, resultFraction);
      expect(residualKg + additiveKg + found.waterL * 0.9982).toBeCloseTo(resultKg, 6);
      expect(residualKg * residualFraction + additiveKg * additiveFraction).toBeCloseTo(resultKg * resultFraction, 6);
    });
  });
  it('meets the target, or is stronger with water alone', () => {
    forAll((found, { targetPercent }) => {
      if (found.way === 'mixed') expect(found.resultVolumePercent).toBeCloseTo(targetPercent, 6);
      else expect(found.resultVolumePercent).toBeGreaterThan(targetPercent - 1e-6);
    });
  });
  it('never pours a negative amount, and jugs sum to it', () => {
    forAll((found, { jugL }) => {
      expect(found.additiveL).toBeGreaterThanOrEqual(0);
      expect(found.waterL).toBeGreaterThanOrEqual(0);
      const all = found.jugs ?? [];
      expect(all.reduce((sum, jug) => sum + jug.additiveMl, 0)).toBeCloseTo(found.additiveL * 1000, 5);
      expect(all.reduce((sum, jug) => sum + jug.waterMl, 0)).toBeCloseTo(found.waterL * 1000, 5);
      for (const jug of all) {
        expect(Math.min(jug.additiveMl, jug.waterMl)).toBeGreaterThanOrEqual(0);
        expect(jug.additiveMl + jug.waterMl).toBeLessThanOrEqual(jugL * 1000 + 1e-5);
      }
    });
  });
  it('equals mixing drop by drop', () => {
    // An independent way to the same strength: glycol and water counted in thousandths of a litre, no formula inverted.
    forAll((found, { glycol, residualPercent }) => {
      const residualFraction = FREEZING_CURVE[glycol].massPercentOfVolume(residualPercent) / 100;
      let glycolKg = found.residualL * densityAt20(glycol, residualFraction) * residualFraction;
      let totalKg = found.residualL * densityAt20(glycol, residualFraction);
      const additiveDensity = densityAt20(glycol, found.additiveMassPercent / 100);
      const drops = 1000;
      for (let drop = 0; drop < drops; drop += 1) {
        totalKg += (found.additiveL / drops) * additiveDensity + (found.waterL / drops) * 0.9982;
        glycolKg += ((found.additiveL / drops) * additiveDensity * found.additiveMassPercent) / 100;
      }
      expect((100 * glycolKg) / totalKg).toBeCloseTo(found.resultMassPercent ?? Number.NaN, 6);
    });
  });
  it('where refused for space, the space it asks for is enough and no larger than the system', () => {
    let refusedForSpace = 0;
    fc.assert(
      fc.property(anyPartDrain, (drain) => {
        const input = inputOf(drain);
        const found = recipe(input);
        if (found.ok || found.problem.code !== 'drain-more') return;
        refusedForSpace += 1;
        const { requiredDrainL = Number.NaN } = found.problem;
        expect(requiredDrainL).toBeGreaterThan(input.drainedVolumeL);
        expect(requiredDrainL).toBeLessThanOrEqual(input.systemVolumeL);
        expect(recipe({ ...input, drainedVolumeL: requiredDrainL }).ok).toBe(true);
      }),
      { numRuns: 1500 },
    );
    expect(refusedForSpace).toBeGreaterThan(10);
  });
});

describe('rounding to marks', () => {
  it('keeps whole marks, whole jugs and the sums', () => {
    const anyAmount = fc.integer(STEPS).map(evenly(0, 30));
    fc.assert(
      fc.property(
        anyAmount,
        anyAmount,
        fc.integer(STEPS).map(evenly(0.2, 10)),
        fc.integer({ min: 1, max: 200 }),
        (additiveL, waterL, jugL, markMl) => {
          const jugs = roundToMarks({ additiveL, waterL }, { jugMl: jugL * 1000, markMl });
          for (const jug of jugs) {
            expect(Number.isInteger(Math.round(jug.additiveMl / markMl)) && jug.additiveMl >= 0 && jug.waterMl >= 0).toBe(true);
            expect(Math.abs(jug.additiveMl / markMl - Math.round(jug.additiveMl / markMl))).toBeLessThan(1e-9);
            expect(jug.additiveMl + jug.waterMl).toBeLessThanOrEqual(jugL * 1000 + 1e-6);
          }
          const additiveMl = jugs.reduce((sum, jug) => sum + jug.additiveMl, 0);
          const totalMl = jugs.reduce((sum, jug) => sum + jug.additiveMl + jug.waterMl, 0);
          expect(Math.abs(additiveMl - additiveL * 1000)).toBeLessThanOrEqual(markMl / 2 + 1e-6);
          expect(Math.abs(totalMl - (additiveL + waterL) * 1000)).toBeLessThanOrEqual(markMl / 2 + 1e-6);
        },
      ),
    );
  });
});
