import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { recipe } from '../recipe/recipe.ts';
import { compareStrength } from './compare-strength.ts';
import { impliedSystem } from './implied-system.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

describe('computed beside measured', () => {
  it.each([
    [-30, -30, 'agree'],
    [-30, -27.5, 'agree'],
    [-30, -25, 'measured-weaker'],
    [-30, -36, 'measured-stronger'],
  ])('computed %d °C, measured %d °C: %s', (computedC, measuredC, verdict) => {
    const found = compareStrength({ glycol: 'ethylene', computed: { freezingPointC: computedC }, measured: { freezingPointC: measuredC } });
    if (!found.ok) throw new Error(found.problem.message);
    expect(found.verdict).toBe(verdict);
    expect(found.differenceFreezingK).toBeCloseTo(measuredC - computedC, 12);
    expect(found.warnings.some(({ code }) => code === 'measured-differs')).toBe(verdict !== 'agree');
  });
  it('the tolerance is a setting', () => {
    const input = { glycol: 'ethylene' as const, computed: { volumePercent: 45 }, measured: { volumePercent: 41 } };
    expect(compareStrength(input)).toMatchObject({ verdict: 'measured-weaker' });
    expect(compareStrength({ ...input, toleranceVolumePercent: 5 })).toMatchObject({ verdict: 'agree' });
  });
  it.each([
    [{ computed: {} }, 'exactly-one-needed', 'computed'],
    [{ measured: { volumePercent: 70 } }, 'beyond-table', 'measured.volumePercent'],
    [{ toleranceVolumePercent: -1 }, 'meaningless-value', 'toleranceVolumePercent'],
  ])('refuses %j', (fields, code, field) => {
    const input = { glycol: 'ethylene' as const, computed: { volumePercent: 45 }, measured: { volumePercent: 41 } };
    expect(compareStrength({ ...input, ...fields })).toMatchObject({ ok: false, problem: { code, field } });
  });
});

describe('what the reading says about the vehicle', () => {
  const share = fc.integer(STEPS).map(evenly(0.2, 0.8));
  const strength = fc.integer(STEPS).map(evenly(10, 30));
  it('finds the true system behind a filling that was reckoned for another', () => {
    fc.assert(
      fc.property(fc.integer(STEPS).map(evenly(4, 12)), share, strength, (trueSystemL, drainedShare, residualPercent) => {
        const spaceL = trueSystemL * drainedShare;
        const common = { glycol: 'ethylene', residual: { volumePercent: residualPercent }, additive: { massPercent: 93 } } as const;
        const truly = recipe({
          ...common,
          systemVolumeL: trueSystemL,
          drainedVolumeL: spaceL,
          target: { volumePercent: residualPercent + 5 },
        });
        if (!truly.ok) throw new Error(truly.problem.message);
        const found = impliedSystem({
          ...common,
          systemVolumeL: trueSystemL * 1.2,
          spaceL,
          additiveL: truly.additiveL,
          waterL: truly.waterL,
          measured: { volumePercent: truly.resultVolumePercent },
        });
        if (!found.ok) throw new Error(found.problem.message);
        expect(found.systemVolumeL).toBeCloseTo(trueSystemL, 6);
      }),
    );
  });
  it('finds the true strength of what stayed in, if the capacity was right', () => {
    const common = { glycol: 'ethylene', systemVolumeL: 7, additive: { massPercent: 93 } } as const;
    const truly = recipe({ ...common, drainedVolumeL: 4, residual: { volumePercent: 20 }, target: { volumePercent: 40 } });
    if (!truly.ok) throw new Error(truly.problem.message);
    const found = impliedSystem({
      ...common,
      spaceL: 4,
      residual: { volumePercent: 35 },
      additiveL: truly.additiveL,
      waterL: truly.waterL,
      measured: { volumePercent: 40 },
    });
    expect(found.ok && found.residualVolumePercent).toBeCloseTo(20, 6);
  });
  it('says so where neither explains the reading', () => {
    const found = impliedSystem({
      glycol: 'ethylene',
      systemVolumeL: 7,
      spaceL: 4,
      residual: { volumePercent: 20 },
      additive: { volumePercent: 100 },
      additiveL: 1,
      waterL: 3,
      measured: { volumePercent: 55 },
    });
    expect(found).toMatchObject({ ok: true, residualL: null, systemVolumeL: null, residualVolumePercent: null });
  });
  it('refuses more space than system', () => {
    const found = impliedSystem({
      glycol: 'ethylene',
      systemVolumeL: 7,
      spaceL: 8,
      residual: { volumePercent: 20 },
      additive: { volumePercent: 100 },
      additiveL: 1,
      waterL: 3,
      measured: { volumePercent: 30 },
    });
    expect(found).toMatchObject({ ok: false, problem: { field: 'spaceL', limit: 7 } });
  });
});
