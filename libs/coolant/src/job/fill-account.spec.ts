import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { fillAccount } from './fill-account.ts';
import { type FillAccount, type FillAccountInput } from './fill-account.types.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

function accountOf(input: FillAccountInput): FillAccount {
  const found = fillAccount(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

const codes = (input: FillAccountInput): readonly string[] => accountOf(input).warnings.map(({ code }) => code);

const OPENED: FillAccountInput = { missingOnArrival: { volumeL: 1 }, drained: { volumeL: 3, keptL: 1 } };

describe('a filling that comes out', () => {
  const done = accountOf({
    ...OPENED,
    systemVolumeL: 7,
    firstFill: { volumeL: 3.4, productL: 1.6, keptL: 1 },
    afterShortRun: { volumeL: 0.4, productL: 0.2 },
    afterRunHot: { volumeL: 0.15 },
    nextMorning: { volumeL: 0.1 },
    shrinkL: 0.05,
  });
  it('balances', () => {
    expect(done).toMatchObject({ spaceL: 4, shortfall: 'within', morning: 'within', warnings: [] });
    expect(done.filledL).toBeCloseTo(3.9, 12);
    expect(done.shortfallL).toBeCloseTo(0.1, 12);
  });
  it('tells product for the invoice, and kept and waste', () => {
    expect(done.productUsedL).toBeCloseTo(1.8, 12);
    expect(done).toMatchObject({ keptL: 1, keptUsedL: 1, keptLeftL: 0, wasteL: 2 });
  });
  it('draws four steps that end with what is still missing', () => {
    expect(done.steps.map(({ stage }) => stage)).toEqual(['first-fill', 'after-short-run', 'after-run-hot', 'next-morning']);
    expect(done.steps[3]?.filledL).toBeCloseTo(4, 12);
    expect(done.steps[3]?.stillMissingL).toBeCloseTo(0, 12);
  });
});

describe('as the job goes on', () => {
  it('nothing is judged before the first filling', () => {
    expect(accountOf(OPENED)).toMatchObject({ spaceL: 4, filledL: 0, shortfall: 'not-yet', morning: 'not-yet', steps: [] });
  });
  it('an empty card is an empty account', () => {
    expect(accountOf({})).toMatchObject({ spaceL: 0, shortfall: 'not-yet', wasteL: 0, productUsedL: 0 });
  });
});

describe('short, over, morning', () => {
  it.each([
    [3.7, 'within', []],
    [3.69, 'short', ['air-may-be-trapped']],
    [4.3, 'within', []],
    [4.31, 'over', ['more-than-space']],
  ] as const)('%d L into 4 L: %s', (volumeL, shortfall, warned) => {
    const input: FillAccountInput = { missingOnArrival: { volumeL: 1 }, drained: { volumeL: 3 }, firstFill: { volumeL } };
    expect(accountOf(input).shortfall).toBe(shortfall);
    expect(codes(input)).toEqual(warned);
  });
  it("'about' widens the tolerance, once for each figure it stands at", () => {
    const input: FillAccountInput = {
      missingOnArrival: { volumeL: 1, isAbout: true },
      drained: { volumeL: 3, isAbout: true },
      firstFill: { volumeL: 3.25 },
    };
    expect(accountOf(input)).toMatchObject({ shortfallToleranceL: 0.8, shortfall: 'within' });
    expect(accountOf({ ...input, drained: { volumeL: 3 } })).toMatchObject({ shortfall: 'short' });
  });
  it('tolerances are settings', () => {
    const input: FillAccountInput = { missingOnArrival: { volumeL: 1 }, drained: { volumeL: 3 }, firstFill: { volumeL: 3.5 } };
    expect(accountOf(input).shortfall).toBe('short');
    expect(accountOf({ ...input, tolerances: { shortfallL: 0.5 } })).toMatchObject({
      shortfall: 'within',
      tolerances: { shortfallL: 0.5, morningL: 0.2, aboutL: 0.25 },
    });
  });
  it.each([
    [0.2, false, 'within', []],
    [0.21, false, 'look-for-leak', ['check-for-leak']],
    [0.4, true, 'within', []],
    [0.5, true, 'look-for-leak', ['check-for-leak']],
  ] as const)('the morning takes %d L (about: %s): %s', (volumeL, isAbout, morning, warned) => {
    const input: FillAccountInput = { drained: { volumeL: 4 }, firstFill: { volumeL: 4 }, nextMorning: { volumeL, isAbout } };
    expect(accountOf(input).morning).toBe(morning);
    expect(codes(input)).toEqual(warned);
  });
  it('what the evening was short of comes out as air, not as a leak', () => {
    const input: FillAccountInput = { drained: { volumeL: 4 }, firstFill: { volumeL: 3.4 }, nextMorning: { volumeL: 0.6 } };
    expect(accountOf(input)).toMatchObject({ shortfall: 'short', morning: 'air-came-out' });
    expect(accountOf({ ...input, nextMorning: { volumeL: 0.9 } }).morning).toBe('look-for-leak');
  });
  it('kept coolant that stayed in the bucket is named', () => {
    expect(codes({ ...OPENED, firstFill: { volumeL: 4, keptL: 0.4, productL: 1.8 } })).toEqual(['kept-left-over']);
  });
});

describe('contradictions', () => {
  it.each([
    [{ drained: { volumeL: 3, keptL: 4 } }, 'contradiction', 'drained.keptL'],
    [{ drained: { volumeL: 3, keptL: 1 }, firstFill: { volumeL: 3, keptL: 2 } }, 'contradiction', 'drained.keptL'],
    [{ firstFill: { volumeL: 1, productL: 0.8, keptL: 0 }, drained: { volumeL: 3, keptL: 1 } }, undefined, undefined],
    [{ firstFill: { volumeL: 1, productL: 1.2 } }, 'contradiction', 'firstFill.volumeL'],
    [{ systemVolumeL: 3, drained: { volumeL: 3.5 } }, 'more-than-system', 'drained.volumeL'],
    [{ systemVolumeL: 3, drained: { volumeL: 3.5, isAbout: true } }, undefined, undefined],
    [{ drained: { volumeL: -1 } }, 'meaningless-value', 'drained.volumeL'],
    [{ firstFill: { volumeL: Number.NaN } }, 'not-a-number', 'firstFill.volumeL'],
    [{ tolerances: { aboutL: -1 } }, 'meaningless-value', 'tolerances.aboutL'],
  ])('%j: %s', (input, code, field) => {
    const found = fillAccount(input);
    if (code === undefined) expect(found.ok).toBe(true);
    else expect(found).toMatchObject({ ok: false, problem: { code, field } });
  });
});

describe('what goes in and out is neither made nor lost', () => {
  it('drained is kept and waste; poured is product, kept and water', () => {
    const litres = fc.integer(STEPS).map(evenly(0, 10));
    const share = fc.integer(STEPS).map(evenly(0, 1));
    fc.assert(
      fc.property(litres, litres, share, share, (drainedL, pouredL, keptShare, backShare) => {
        const keptL = drainedL * keptShare;
        const keptBackL = Math.min(pouredL, keptL * backShare);
        const found = accountOf({ drained: { volumeL: drainedL, keptL }, firstFill: { volumeL: pouredL, keptL: keptBackL } });
        expect(found.keptL + found.wasteL).toBeCloseTo(drainedL, 9);
        expect(found.keptUsedL + found.keptLeftL).toBeCloseTo(keptL, 9);
        expect(found.filledL + found.shortfallL).toBeCloseTo(found.spaceL, 9);
      }),
    );
  });
});
