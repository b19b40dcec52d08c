import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Glycol } from '../glycol.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';
import { protection, type Protection, type ProtectionInput } from './protection.ts';
import { shownProtection } from './shown-protection.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

const anyGlycol = fc.constantFrom<Glycol>('ethylene', 'propylene');

function protectionOf(input: ProtectionInput): Protection {
  const found = protection(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

function codes(input: ProtectionInput): readonly string[] {
  return protectionOf(input).warnings.map(({ code }) => code);
}

describe('published figures', () => {
  // Heavy-equipment operator manual, coolant page DX,COOL19 (2013, read): volume % of glycol.
  it.each([
    ['ethylene', 40, -24],
    ['ethylene', 50, -37],
    ['propylene', 40, -21],
    ['propylene', 50, -33],
  ] as const)('%s glycol at %d volume %% protects to %d °C within 1 K', (glycol, volumePercent, printedC) => {
    expect(Math.abs(protectionOf({ glycol, volumePercent }).freezingPointC - printedC)).toBeLessThanOrEqual(1);
  });
  // Automotive textbook site, antifreeze testing (read): 50 % protects to −34 °F = −36.7 °C.
  it('50 volume % of ethylene glycol: −34 °F', () => {
    expect(protectionOf({ glycol: 'ethylene', volumePercent: 50 }).freezingPointC).toBeCloseTo(-36.7, 0);
  });
  // Same manual (read): 60 % of ethylene glycol to −52 °C. The table ends before: never credited.
  it('60 volume % of ethylene glycol is credited with the table end only', () => {
    const found = protectionOf({ glycol: 'ethylene', volumePercent: 60 });
    expect(found).toMatchObject({ freezingPointC: -48.3, shownFreezingPointC: -48, massPercent: null, isAtLeast: true });
    expect(found.warnings.map(({ code }) => code)).toContain('at-least');
  });
  it('the table end itself is no "at least"', () => {
    expect(protectionOf({ glycol: 'ethylene', volumePercent: 57.8 })).toMatchObject({ massPercent: 60, isAtLeast: false });
    expect(protectionOf({ glycol: 'propylene', volumePercent: 60 })).toMatchObject({ massPercent: 60, isAtLeast: false });
  });
});

describe('refusals name limit and reason', () => {
  it.each([
    [{ glycol: 'ethylene', volumePercent: 60.1 }, 'beyond-table', 'impossible', 60],
    [{ glycol: 'ethylene', massPercent: 60.5 }, 'beyond-table', 'impossible', 60],
    [{ glycol: 'ethylene', freezingPointC: -48.4 }, 'beyond-table', 'impossible', -48.3],
    [{ glycol: 'propylene', freezingPointC: -51.2 }, 'beyond-table', 'impossible', -51.1],
    [{ glycol: 'ethylene', volumePercent: -1 }, 'meaningless-value', 'malformed', 0],
    [{ glycol: 'ethylene', volumePercent: 101 }, 'meaningless-value', 'malformed', 100],
    [{ glycol: 'ethylene', freezingPointC: 1 }, 'meaningless-value', 'malformed', 0],
  ] as const)('%j', (input, code, kind, limit) => {
    const found = protection(input);
    expect(found).toMatchObject({ ok: false, problem: { code, kind, limit } });
    if (!found.ok) expect(found.problem.message.length).toBeGreaterThan(20);
  });
  it('needs exactly one strength', () => {
    expect(protection({ glycol: 'ethylene' })).toMatchObject({ ok: false, problem: { code: 'exactly-one-needed', kind: 'malformed' } });
    expect(protection({ glycol: 'ethylene', volumePercent: 40, massPercent: 40 })).toMatchObject({
      ok: false,
      problem: { code: 'exactly-one-needed', message: expect.stringContaining('volumePercent and massPercent') },
    });
  });
  it('needs a number', () => {
    expect(protection({ glycol: 'ethylene', volumePercent: Number.NaN })).toMatchObject({ ok: false, problem: { code: 'not-a-number' } });
  });
});

describe('warnings', () => {
  it('below the corrosion limit, plain water, inside', () => {
    expect(codes({ glycol: 'ethylene', volumePercent: 32 })).toEqual(['below-corrosion-limit']);
    expect(codes({ glycol: 'ethylene', volumePercent: 0 })).toEqual(['no-protection', 'below-corrosion-limit']);
    expect(codes({ glycol: 'ethylene', volumePercent: 45 })).toEqual([]);
  });
  it('limits are of product where the product is known', () => {
    const product = { massPercent: 93 };
    expect(codes({ glycol: 'ethylene', volumePercent: 31.5, product })).toEqual([]);
    expect(codes({ glycol: 'ethylene', volumePercent: 56.5, product })).toEqual(['above-useful-maximum']);
  });
  it("the label's own limits rule", () => {
    expect(codes({ glycol: 'ethylene', volumePercent: 45, limits: { minimumPercent: 50 } })).toEqual(['below-corrosion-limit']);
    expect(codes({ glycol: 'ethylene', volumePercent: 45, limits: { maximumPercent: 40 } })).toEqual(['above-useful-maximum']);
  });
  it('% of product and % of pure glycol are two figures', () => {
    const found = protectionOf({ glycol: 'ethylene', massPercent: 48.93, product: { massPercent: 93 } });
    expect(found.productPercent).toBeCloseTo(50, 1);
    expect(found.volumePercent).toBeCloseTo(46.5, 1);
  });
  it('a problem of the product points at the product', () => {
    expect(protection({ glycol: 'ethylene', volumePercent: 40, product: { massPercent: 0 } })).toMatchObject({
      ok: false,
      problem: { field: 'product.massPercent' },
    });
  });
});

describe('shown protection rounds towards warmer', () => {
  it.each([
    [-36.99, '°C', 0, -36],
    [-37, '°C', 0, -37],
    [-37.0000000001, '°C', 0, -37],
    [-36.9999999999, '°C', 0, -37],
    [-36.99, '°C', 1, -36.9],
    [-36.99, '°F', 0, -34],
    [-0.4, '°C', 0, 0],
  ] as const)('%d °C in %s with %d decimals is %d', (freezingPointC, unit, decimals, shown) => {
    expect(shownProtection(freezingPointC, { unit, decimals })).toBe(shown);
  });
});

describe('properties', () => {
  it('inverse of inverse', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(0, 1)), (glycol, share) => {
        const volumePercent = share * FREEZING_CURVE[glycol].endVolumePercent;
        const there = protectionOf({ glycol, volumePercent });
        expect(protectionOf({ glycol, freezingPointC: there.freezingPointC }).volumePercent).toBeCloseTo(volumePercent, 9);
        expect(protectionOf({ glycol, massPercent: there.massPercent ?? -1 }).volumePercent).toBeCloseTo(volumePercent, 9);
      }),
    );
  });
  it('more glycol never freezes warmer', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(0, 60)), fc.integer(STEPS).map(evenly(0, 60)), (glycol, a, b) => {
        const weaker = protectionOf({ glycol, volumePercent: Math.min(a, b) });
        const stronger = protectionOf({ glycol, volumePercent: Math.max(a, b) });
        expect(stronger.freezingPointC).toBeLessThanOrEqual(weaker.freezingPointC);
      }),
    );
  });
  it('what is shown never promises more than what was computed', () => {
    fc.assert(
      fc.property(anyGlycol, fc.integer(STEPS).map(evenly(0, 60)), (glycol, volumePercent) => {
        const found = protectionOf({ glycol, volumePercent });
        expect(found.shownFreezingPointC).toBeGreaterThanOrEqual(found.freezingPointC - 1e-9);
        expect(found.shownFreezingPointC - found.freezingPointC).toBeLessThan(1);
      }),
    );
  });
});
