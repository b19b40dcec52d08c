import { describe, expect, it } from '@jest/globals';
import { replacement } from './replacement.ts';

function drainOf(systemVolume: number, presentPercent: number, addedPercent: number, targetPercent: number): number {
  const found = replacement({ systemVolume, presentPercent, addedPercent, targetPercent });
  if (!found.ok) throw new Error(found.problem.message);
  return found.drainVolume;
}

// Published worked examples, drain and replace (read).
describe('drain and replace, as published', () => {
  it.each([
    ['Stewart, Precalculus 6e, section 1.6, problem 57', 3.6, 60, 0, 50, 0.6, 9],
    ['algebra.com question 1106104', 20, 60, 100, 70, 5, 9],
    ['algebra.com question 1039181 (qt)', 10, 30, 100, 65, 5, 9],
    ['qammunity.org 5924089', 16, 40, 100, 60, 5.3333333, 6],
    ['vespr.org, chemistry (qt, printed to two decimals)', 7, 35, 100, 50, 1.62, 2],
    ['test-prep example 4', 12, 25, 100, 50, 4, 9],
    ['school maths bank y10-3j-q8', 10, 50, 100, 80, 6, 9],
    ['test-prep text: draining 5 L of 20 L at 40 % gives 55 %', 20, 40, 100, 55, 5, 9],
  ])('%s', (_source, system, present, added, target, printed, decimals) => {
    expect(drainOf(system, present, added, target)).toBeCloseTo(printed, decimals);
  });
});

// OpenStax, Intermediate Algebra 2e, modules m81381 and m82498 (read; CC BY-NC-SA 4.0): blending is the same sum, with
// the whole as the system and one partner as what is in it.
describe('blending two strengths, as published', () => {
  it.each([
    ['360 L of 85 % from 75 % and 90 %: litres of 90 %', 360, 75, 90, 85, 240],
    ['the same: litres of 75 %', 360, 90, 75, 85, 120],
    ['240 L of 50 % from 40 % and 70 %: litres of 70 %', 240, 40, 70, 50, 80],
  ])('%s', (_words, whole, present, added, target, printed) => {
    expect(drainOf(whole, present, added, target)).toBeCloseTo(printed, 9);
  });
});

describe('a published answer that is wrong', () => {
  // askanewquestion.com 2086013: 18 L at 10 % to 40 % with pure antifreeze is printed as 3.857 L.
  it('is 6 L, because 12 L at 10 % and 6 L pure make 18 L at 40 %', () => {
    const drained = drainOf(18, 10, 100, 40);
    expect(drained).toBeCloseTo(6, 9);
    expect(((18 - drained) * 10 + drained * 100) / 18).toBeCloseTo(40, 9);
    expect(((18 - 3.857) * 10 + 3.857 * 100) / 18).not.toBeCloseTo(40, 0);
  });
});

describe('refusals', () => {
  it.each([
    [{ systemVolume: 7, presentPercent: 30, addedPercent: 40, targetPercent: 50 }, 'additive-too-weak', 40],
    [{ systemVolume: 7, presentPercent: 30, addedPercent: 100, targetPercent: 20 }, 'additive-too-weak', 100],
    [{ systemVolume: 7, presentPercent: 30, addedPercent: 30, targetPercent: 50 }, 'additive-too-weak', 30],
    [{ systemVolume: 0, presentPercent: 30, addedPercent: 100, targetPercent: 50 }, 'meaningless-value', 0],
    [{ systemVolume: 7, presentPercent: 130, addedPercent: 100, targetPercent: 50 }, 'meaningless-value', 100],
  ])('%j', (input, code, limit) => {
    expect(replacement(input)).toMatchObject({ ok: false, problem: { code, limit } });
  });
  it('nothing to do is no refusal', () => {
    expect(replacement({ systemVolume: 7, presentPercent: 30, addedPercent: 30, targetPercent: 30 })).toMatchObject({
      ok: true,
      drainVolume: 0,
    });
  });
});
