import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { flush } from './flush.ts';
import { recipeAfterFlush, type RecipeAfterFlushInput } from './recipe-after-flush.ts';
import { recipe } from './recipe.ts';
import { refillSpace } from './refill-space.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

describe('flush', () => {
  it('half drained three times leaves an eighth', () => {
    expect(flush({ systemVolumeL: 8, drainedVolumeL: 4, cycles: 3 })).toMatchObject({
      ok: true,
      remainingFraction: 0.125,
      cycles: 3,
      leftInBlockL: 4,
    });
  });
  it.each([
    [0.05, 5],
    [0.25, 2],
    [0.2499, 3],
    [1, 0],
  ])('at most %d left takes %d cycles', (maxRemainingFraction, cycles) => {
    expect(flush({ systemVolumeL: 8, drainedVolumeL: 4, maxRemainingFraction })).toMatchObject({ ok: true, cycles });
  });
  it('everything drained leaves nothing', () => {
    expect(flush({ systemVolumeL: 8, drainedVolumeL: 8, maxRemainingFraction: 0.01 })).toMatchObject({
      ok: true,
      cycles: 1,
      remainingFraction: 0,
    });
  });
  it('so many cycles suffice and one less does not', () => {
    const share = fc.integer(STEPS).map(evenly(0.1, 0.95));
    fc.assert(
      fc.property(share, fc.integer(STEPS).map(evenly(0.01, 0.99)), (drainedShare, maxRemainingFraction) => {
        const found = flush({ systemVolumeL: 10, drainedVolumeL: 10 * drainedShare, maxRemainingFraction });
        if (!found.ok) throw new Error(found.problem.message);
        expect(found.remainingFraction).toBeLessThanOrEqual(maxRemainingFraction * (1 + 1e-6));
        expect((1 - drainedShare) ** (found.cycles - 1)).toBeGreaterThan(maxRemainingFraction * (1 - 1e-6));
      }),
    );
  });
  it.each([
    [{ cycles: 1.5 }, 'meaningless-value'],
    [{ cycles: -1 }, 'meaningless-value'],
    [{ cycles: 1000 }, 'meaningless-value'],
    [{}, 'exactly-one-needed'],
    [{ cycles: 2, maxRemainingFraction: 0.1 }, 'exactly-one-needed'],
    [{ maxRemainingFraction: 0 }, 'meaningless-value'],
    [{ cycles: 1, drainedVolumeL: 9 }, 'more-than-system'],
    [{ cycles: 1, drainedVolumeL: 0 }, 'meaningless-value'],
    [{ maxRemainingFraction: 0.001, drainedVolumeL: 0.01 }, 'outside-published-range'],
  ])('refuses %j', (fields, code) => {
    expect(flush({ systemVolumeL: 8, drainedVolumeL: 4, ...fields })).toMatchObject({ ok: false, problem: { code } });
  });
});

describe('filling after a flush', () => {
  const job: RecipeAfterFlushInput = {
    glycol: 'ethylene',
    systemVolumeL: 8,
    drainedVolumeL: 4,
    cycles: 3,
    present: { volumePercent: 50 },
    additive: { volumePercent: 100 },
    target: { volumePercent: 45 },
  };
  it('the water left in the block makes it need more concentrate than the space alone', () => {
    const found = recipeAfterFlush(job);
    if (!found.ok) throw new Error(found.problem.message);
    const halfAndHalf = recipe({ ...job, drainedVolumeL: undefined, systemVolumeL: 4 });
    if (!halfAndHalf.ok) throw new Error(halfAndHalf.problem.message);
    expect(found.additiveL).toBeGreaterThan(halfAndHalf.additiveL * 1.5);
    expect(found).toMatchObject({ remainingFraction: 0.125, leftInBlockL: 4, residualL: 4 });
    expect(found.leftInBlockVolumePercent).toBeCloseTo(50 / 8, 0);
    expect(found.resultVolumePercent).toBeCloseTo(45, 9);
  });
  it('unknown strength before counts as water: then it needs the most', () => {
    const known = recipeAfterFlush(job);
    const unknown = recipeAfterFlush({ ...job, present: undefined });
    if (!known.ok || !unknown.ok) throw new Error('both must be possible');
    expect(unknown.additiveL).toBeGreaterThan(known.additiveL);
    expect(unknown.leftInBlockVolumePercent).toBe(0);
    expect(unknown.assumptions.join(' ')).toContain('counted as plain water');
  });
  it('where too little comes out it says how much must', () => {
    expect(recipeAfterFlush({ ...job, drainedVolumeL: 2 })).toMatchObject({ ok: false, problem: { code: 'drain-more' } });
  });
  it.each([
    [{ cycles: 0 }, 'meaningless-value'],
    [{ cycles: 2.5 }, 'meaningless-value'],
    [{ present: { massPercent: 80 } }, 'beyond-table'],
  ])('refuses %j', (fields, code) => {
    expect(recipeAfterFlush({ ...job, ...fields })).toMatchObject({ ok: false, problem: { code } });
  });
});

describe('space to fill', () => {
  it('is what was missing and what was drained', () => {
    expect(refillSpace({ systemVolumeL: 7, missingOnArrivalL: 1, drainedL: 3 })).toEqual({ ok: true, spaceL: 4, residualL: 3 });
  });
  it('never more than the system', () => {
    expect(refillSpace({ systemVolumeL: 7, missingOnArrivalL: 3, drainedL: 5 })).toMatchObject({
      ok: false,
      problem: { code: 'more-than-system', limit: 4 },
    });
  });
});
