import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { monthsLater, parseCalendarDate } from '../checks/calendar-date.ts';
import { mixingAdvice } from './mixing-advice.ts';
import { serviceLife } from './service-life.ts';
import { waterQuality } from './water-quality.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

describe('calendar', () => {
  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '26-04-01', '2026-4-1', 'soon'])('%s is no day', (text) => {
    expect(parseCalendarDate(text)).toBeUndefined();
  });
  it.each([
    ['2024-02-29', 12, '2025-02-28'],
    ['2024-02-29', 48, '2028-02-29'],
    ['2026-01-31', 1, '2026-02-28'],
    ['2026-11-30', 3, '2027-02-28'],
    ['2026-03-31', 60, '2031-03-31'],
    ['2026-12-15', 12, '2027-12-15'],
  ])('%s and %d months: %s', (text, months, expected) => {
    const date = parseCalendarDate(text);
    if (!date) throw new Error('a day');
    expect(monthsLater(date, months)).toBe(expected);
  });
});

describe('mixing technologies', () => {
  it('the vehicle maker decides, whatever the class', () => {
    expect(mixingAdvice({ present: 'organic', added: 'organic', isApprovedByVehicleMaker: false }).verdict).toBe('not-approved');
    expect(mixingAdvice({ present: 'organic', added: 'organic' }).verdict).toBe('look-up-first');
    expect(mixingAdvice({ present: 'organic', added: 'organic', isApprovedByVehicleMaker: true }).verdict).toBe('suitable');
  });
  // Marine trade forum, technical note (read): mixing an organic with an inorganic coolant cuts the life to two years.
  it('mixed types warn and last as long as the shorter', () => {
    const found = mixingAdvice({ present: 'inorganic', added: 'organic', isApprovedByVehicleMaker: true });
    expect(found).toMatchObject({ verdict: 'flush-first', serviceYears: 2 });
    expect(found.warnings.map(({ code }) => code)).toEqual(['mixing-technologies']);
  });
  it('flushed, or the same again, is suitable', () => {
    expect(mixingAdvice({ present: 'inorganic', added: 'organic', isApprovedByVehicleMaker: true, isFlushed: true })).toMatchObject({
      verdict: 'suitable',
      serviceYears: 5,
      warnings: [],
    });
  });
  it('unknown content is treated as another type', () => {
    expect(mixingAdvice({ added: 'hybrid', isApprovedByVehicleMaker: true })).toMatchObject({ verdict: 'flush-first', serviceYears: 2 });
  });
});

describe('service life', () => {
  it('by time and distance', () => {
    expect(serviceLife({ technology: 'organic', filledOn: '2026-03-31', filledAtKm: 80000 })).toMatchObject({
      ok: true,
      dueOn: '2031-03-31',
      dueAtKm: 330000,
      state: 'not-judged',
    });
  });
  it('label or schedule beat the usual figure', () => {
    const found = serviceLife({ technology: 'organic', filledOn: '2026-03-31', statedMonths: 36, statedKm: 100000, filledAtKm: 0 });
    expect(found).toMatchObject({ ok: true, dueOn: '2029-03-31', dueAtKm: 100000 });
  });
  it.each([
    ['2028-03-30', undefined, 'in-service'],
    ['2028-03-31', undefined, 'due'],
    ['2027-01-01', 60000, 'due'],
    ['2027-01-01', 59999, 'in-service'],
    [undefined, 60000, 'due'],
  ])('inorganic filled 2026-03-31 at 10 000 km, on %s at %s km: %s', (today, odometerKm, state) => {
    const found = serviceLife({ technology: 'inorganic', filledOn: '2026-03-31', filledAtKm: 10000, today, odometerKm });
    expect(found).toMatchObject({ ok: true, state });
    expect(found.ok && found.warnings.length).toBe(state === 'due' ? 1 : 0);
  });
  it('no distance is known for hybrids', () => {
    expect(serviceLife({ technology: 'hybrid', filledOn: '2026-03-31', filledAtKm: 10000 })).toMatchObject({ ok: true, dueAtKm: null });
  });
  it.each([
    [{ filledOn: '2026-02-30' }, 'not-a-date', 'filledOn'],
    [{ filledOn: '2026-02-01', today: 'tomorrow' }, 'not-a-date', 'today'],
    [{ filledOn: '2026-02-01', statedMonths: 0 }, 'meaningless-value', 'statedMonths'],
    [{ filledOn: '2026-02-01', odometerKm: -1 }, 'meaningless-value', 'odometerKm'],
  ])('refuses %j', (fields, code, field) => {
    expect(serviceLife({ technology: 'organic', ...fields })).toMatchObject({ ok: false, problem: { code, field } });
  });
});

describe('water', () => {
  // Heavy-equipment operator manual, coolant mixing page (read): chloride 40, sulphate 100, hardness 170, solids 340
  // mg/L, pH 5.5 to 9.
  it.each([
    [{ chlorideMgL: 40, sulfateMgL: 100, hardnessMgL: 170, dissolvedSolidsMgL: 340, pH: 9 }, 'suitable'],
    [{ chlorideMgL: 41 }, 'unsuitable'],
    [{ sulfateMgL: 101 }, 'unsuitable'],
    [{ hardnessMgL: 171 }, 'unsuitable'],
    [{ dissolvedSolidsMgL: 341 }, 'unsuitable'],
    [{ pH: 5.4 }, 'unsuitable'],
    [{ pH: 9.1 }, 'unsuitable'],
    [{ chlorideMgL: 10 }, 'not-known'],
    [{}, 'not-known'],
    [{ isDemineralised: true }, 'suitable'],
    [{ isDemineralised: true, chlorideMgL: 80 }, 'unsuitable'],
  ])('%j is %s', (input, verdict) => {
    expect(waterQuality(input)).toMatchObject({ ok: true, verdict });
  });
  it('names what is wrong', () => {
    expect(waterQuality({ hardnessMgL: 320 })).toMatchObject({
      text: expect.stringContaining('Hardness as calcium carbonate 320.0 mg/L (at most 170)'),
    });
  });
  it('refuses a pH that cannot be', () => {
    fc.assert(
      fc.property(fc.integer(STEPS).map(evenly(14.0001, 1000)), (pH) => {
        expect(waterQuality({ pH })).toMatchObject({ ok: false, problem: { field: 'pH', limit: 14 } });
      }),
    );
  });
});
