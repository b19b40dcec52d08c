import { describe, expect, it } from '@jest/globals';
import { jugPlan } from './jug-plan.ts';

describe('jugs alone', () => {
  it('three jugs of two litres, half and half', () => {
    const found = jugPlan({ glycol: 'ethylene', additive: { massPercent: 93 }, additiveL: 3, waterL: 3, jugL: 2 });
    if (!found.ok) throw new Error(found.problem.message);
    expect(found.jugs).toHaveLength(3);
    expect(found.jugs[0]?.additiveMl).toBeCloseTo(1000, 9);
    expect(found.roundedJugs.jugs).toEqual(Array.from({ length: 3 }, () => ({ additiveMl: 1000, waterMl: 1000 })));
    expect(found.resultProductPercent).toBeCloseTo(50, 9);
    expect(found.roundedJugs.resultFreezingPointC).toBeCloseTo(found.resultFreezingPointC, 9);
  });
  it('coarse marks show the strength they truly give', () => {
    const found = jugPlan({ glycol: 'ethylene', additive: { massPercent: 93 }, additiveL: 1.1, waterL: 1.7, jugL: 3, markMl: 500 });
    if (!found.ok) throw new Error(found.problem.message);
    expect(found.roundedJugs).toMatchObject({ additiveL: 1, waterL: 2 });
    expect(found.roundedJugs.resultFreezingPointC).toBeGreaterThan(found.resultFreezingPointC);
  });
  it('a jug whose size is no whole number of marks is filled to its last mark', () => {
    const found = jugPlan({ glycol: 'ethylene', additive: { massPercent: 93 }, additiveL: 1, waterL: 1, jugL: 1.2, markMl: 500 });
    if (!found.ok) throw new Error(found.problem.message);
    expect(found.roundedJugs.jugs).toEqual([
      { additiveMl: 500, waterMl: 500 },
      { additiveMl: 500, waterMl: 500 },
    ]);
  });
  it.each([
    [{ additiveL: -1 }, 'meaningless-value'],
    [{ jugL: 0.01 }, 'meaningless-value'],
    [{ markMl: 5000 }, 'meaningless-value'],
    [{ additive: {} }, 'exactly-one-needed'],
  ])('refuses %j', (fields, code) => {
    const job = { glycol: 'ethylene' as const, additive: { massPercent: 93 }, additiveL: 3, waterL: 3, jugL: 2 };
    expect(jugPlan({ ...job, ...fields })).toMatchObject({ ok: false, problem: { code } });
  });
});
