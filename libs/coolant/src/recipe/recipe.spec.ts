import { describe, expect, it } from '@jest/globals';
import { recipe } from './recipe.ts';
import { type Recipe, type RecipeInput } from './recipe.types.ts';

function recipeOf(input: RecipeInput): Recipe {
  const found = recipe(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

const PART_DRAIN: RecipeInput = {
  glycol: 'ethylene',
  systemVolumeL: 7,
  drainedVolumeL: 4,
  residual: { volumePercent: 33 },
  additive: { volumePercent: 100 },
  target: { volumePercent: 45 },
};

describe('what stays in and what was missing both count', () => {
  // Worked by hand: 7 L, 1 L missing, 3 L drained, 3 L stay in at 33 %: 7 × 0.45 − 3 × 0.33 = 2.16 L; forgetting the
  // missing litre gives 7 × 0.45 − 4 × 0.33 = 1.83 L.
  it('7 L, 1 missing, 3 drained, 33 % to 45 %: 2.16 L by plain volumes, not 1.83', () => {
    const found = recipeOf(PART_DRAIN);
    expect(found.additiveByPlainVolumesL).toBeCloseTo(2.16, 12);
    expect(Math.abs(found.additiveL - 2.16)).toBeLessThan(0.02);
    expect(found).toMatchObject({ spaceL: 4, residualL: 3, way: 'mixed' });
    expect(found.resultVolumePercent).toBeCloseTo(45, 9);
    expect(recipeOf({ ...PART_DRAIN, drainedVolumeL: 3 }).additiveByPlainVolumesL).toBeCloseTo(1.83, 12);
  });
  it('states the shrink, and pours that much more than the space', () => {
    const found = recipeOf(PART_DRAIN);
    expect(found.shrinkL).toBeCloseTo(found.additiveL + found.waterL - 4, 12);
    expect(found.shrinkL).toBeGreaterThan(0.04);
    expect(found.shrinkL).toBeLessThan(0.08);
    expect(found.assumptions.join(' ')).toContain('Mixing shrinks them by 0.06 L');
  });
  it('pours the additive first onto an old filling, and mixed jugs into an empty system', () => {
    expect(recipeOf(PART_DRAIN).pouring.map(({ what }) => what)).toEqual(['additive', 'water']);
    expect(recipeOf({ ...PART_DRAIN, drainedVolumeL: undefined, residual: undefined }).pouring.map(({ what }) => what)).toEqual([
      'mixed-jugs',
    ]);
  });
});

describe('the Saturday job: part drain, reading −18 °C, target −30 °C, 2 L jugs', () => {
  const found = recipeOf({
    glycol: 'ethylene',
    systemVolumeL: 7,
    drainedVolumeL: 3,
    residual: { freezingPointC: -18 },
    additive: { label: { partsProduct: 1, partsWater: 1, freezingPointC: -37 } },
    target: { freezingPointC: -30 },
    jugL: 2,
  });
  it('reaches the target exactly', () => {
    expect(found.resultFreezingPointC).toBeCloseTo(-30, 9);
    expect(found.residualL).toBe(4);
  });
  it('fills two jugs that sum to the recipe', () => {
    expect(found.jugs).toHaveLength(2);
    const additiveMl = found.jugs?.reduce((sum, jug) => sum + jug.additiveMl, 0) ?? 0;
    const waterMl = found.jugs?.reduce((sum, jug) => sum + jug.waterMl, 0) ?? 0;
    expect(additiveMl).toBeCloseTo(found.additiveL * 1000, 9);
    expect(waterMl).toBeCloseTo(found.waterL * 1000, 9);
  });
  it('rounds to marks and tells what truly comes of it', () => {
    expect(found.roundedJugs).toMatchObject({
      markMl: 50,
      additiveL: 1.85,
      waterL: 1.2,
      jugs: [
        { additiveMl: 1200, waterMl: 800 },
        { additiveMl: 650, waterMl: 400 },
      ],
    });
    expect(found.roundedJugs?.resultFreezingPointC).toBeLessThan(-30);
    expect(Math.abs(found.roundedJugs?.overfillL ?? 1)).toBeLessThan(0.05);
    expect(found.warnings).toEqual([]);
  });
  it('tells share of product beside share of glycol', () => {
    expect(found.resultProductPercent).not.toBeNull();
    expect(found.additiveMassPercent).toBeLessThan(100);
  });
});

describe('limits of a recipe', () => {
  it('more must be drained: exactly so much suffices, with no water', () => {
    const refused = recipe({ ...PART_DRAIN, drainedVolumeL: 1 });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'drain-more', kind: 'impossible', field: 'drainedVolumeL' } });
    if (refused.ok) return;
    const { requiredDrainL, message } = refused.problem;
    expect(requiredDrainL).toBeGreaterThan(1);
    expect(message).toMatch(/in total/);
    const enough = recipeOf({ ...PART_DRAIN, drainedVolumeL: requiredDrainL });
    expect(enough.waterL).toBeCloseTo(0, 6);
    expect(enough.resultVolumePercent).toBeCloseTo(45, 9);
    expect(recipe({ ...PART_DRAIN, drainedVolumeL: (requiredDrainL ?? 0) - 0.001 }).ok).toBe(false);
  });
  it('an additive too weak names no drain that would help', () => {
    const refused = recipe({ ...PART_DRAIN, additive: { volumePercent: 40 } });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'additive-too-weak' } });
    if (!refused.ok) expect(refused.problem).not.toHaveProperty('requiredDrainL');
  });
  it('an additive as strong as the target needs everything drained', () => {
    expect(recipe({ ...PART_DRAIN, additive: { volumePercent: 45 } })).toMatchObject({
      ok: false,
      problem: { code: 'drain-more', requiredDrainL: 7 },
    });
    const emptied = recipeOf({ ...PART_DRAIN, drainedVolumeL: 7, additive: { volumePercent: 45 } });
    expect(emptied).toMatchObject({ waterL: 0 });
    expect(emptied.additiveL).toBeCloseTo(7, 9);
  });
  it('a ready-mixed weaker than the target helps where what stays is stronger', () => {
    const found = recipeOf({ ...PART_DRAIN, residual: { volumePercent: 55 }, additive: { volumePercent: 40 } });
    expect(found.resultVolumePercent).toBeCloseTo(45, 9);
    expect(found.resultProductPercent).toBeNull();
  });
  it('strong enough: water alone, and the true strength that comes of it', () => {
    const found = recipeOf({ ...PART_DRAIN, drainedVolumeL: 1, residual: { volumePercent: 50 }, target: { volumePercent: 40 } });
    expect(found).toMatchObject({ way: 'water-alone', additiveL: 0 });
    expect(found.resultVolumePercent).toBeGreaterThan(40);
    expect(found.resultVolumePercent).toBeLessThan(50);
    expect(found.warnings.map(({ code }) => code)).toContain('stronger-than-target');
    expect(found.pouring.map(({ what }) => what)).toEqual(['water']);
  });
  it('nothing drained and strong enough: nothing to pour', () => {
    const found = recipeOf({ ...PART_DRAIN, drainedVolumeL: 0, residual: { volumePercent: 50 }, target: { volumePercent: 40 }, jugL: 2 });
    expect(found.additiveL).toBe(0);
    expect(found.waterL).toBeCloseTo(0, 9);
    expect(found.jugs).toEqual([]);
    expect(found.roundedJugs?.jugs).toEqual([]);
  });
  it('what stays in beyond the table is credited with its end, and said', () => {
    const found = recipeOf({ ...PART_DRAIN, residual: { volumePercent: 59 } });
    expect(found.warnings.map(({ code }) => code)).toContain('residual-credited-at-limit');
    expect(found.additiveL).toBe(recipeOf({ ...PART_DRAIN, residual: { volumePercent: 57.8 } }).additiveL);
  });
  it('warns below the corrosion limit', () => {
    const found = recipeOf({ ...PART_DRAIN, drainedVolumeL: undefined, target: { volumePercent: 20 } });
    expect(found.warnings.map(({ code }) => code)).toEqual(['below-corrosion-limit']);
  });
  it('says that the strength of what stays in was assumed', () => {
    expect(recipeOf({ ...PART_DRAIN, isResidualAssumed: true }).assumptions).toContain(
      'The strength of what stays in is assumed, not read.',
    );
    expect(recipeOf(PART_DRAIN).assumptions).not.toContain('The strength of what stays in is assumed, not read.');
  });
  it('warns where the capacity is that of a service refill', () => {
    expect(recipeOf({ ...PART_DRAIN, capacityKind: 'service-refill' }).warnings.map(({ code }) => code)).toEqual(['capacity-is-refill']);
    expect(recipeOf({ ...PART_DRAIN, capacityKind: 'dry-fill' }).warnings).toEqual([]);
  });
  it('warns when the rounded jugs are too weak', () => {
    const found = recipeOf({ ...PART_DRAIN, jugL: 2, markMl: 500 });
    expect(found.roundedJugs?.additiveL).toBe(2);
    expect(found.warnings.map(({ code }) => code)).toContain('rounded-too-weak');
  });
});

describe('refusals', () => {
  it.each([
    [{ residual: undefined }, 'residual-needed', 'malformed', 'residual'],
    [{ drainedVolumeL: 7.5 }, 'more-than-system', 'impossible', 'drainedVolumeL'],
    [{ drainedVolumeL: -1 }, 'meaningless-value', 'malformed', 'drainedVolumeL'],
    [{ systemVolumeL: 0 }, 'meaningless-value', 'malformed', 'systemVolumeL'],
    [{ systemVolumeL: Number.POSITIVE_INFINITY }, 'not-a-number', 'malformed', 'systemVolumeL'],
    [{ target: { volumePercent: 59 } }, 'beyond-table', 'impossible', 'target.volumePercent'],
    [{ target: { massPercent: 70 } }, 'beyond-table', 'impossible', 'target.massPercent'],
    [{ residual: { massPercent: 90 } }, 'beyond-table', 'impossible', 'residual.massPercent'],
    [{ jugL: 0 }, 'meaningless-value', 'malformed', 'jugL'],
    [{ jugL: 2, markMl: 3000 }, 'meaningless-value', 'malformed', 'markMl'],
    [{ additive: { volumePercent: 100, isWaterless: true } }, 'waterless-fluid', 'impossible', 'additive'],
  ])('%j', (fields, code, kind, field) => {
    expect(recipe({ ...PART_DRAIN, ...fields })).toMatchObject({ ok: false, problem: { code, kind, field } });
  });
});
