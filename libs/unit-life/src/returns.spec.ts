import { describe, expect, it } from '@jest/globals';
import { addDays, creditDueOn, daysBetween, dueToReturn, expectedCredit, type ExposedUnit, exposure, lastReturnDay } from './index.ts';

const DAYS = { orderedOn: '2026-06-05', arrivedOn: '2026-06-09', invoicedOn: '2026-06-30' };

describe('dates of a return', () => {
  it.each([
    ['ordered', '2026-06-19'],
    ['arrived', '2026-06-23'],
    ['invoiced', '2026-07-14'],
  ] as const)('14 days from when it was %s', (windowStart, last) => {
    expect(lastReturnDay({ returnDays: 14, windowStart }, DAYS)).toBe(last);
  });

  it('knows none while the window has not begun', () => {
    expect(lastReturnDay({ returnDays: 14, windowStart: 'invoiced' }, { ...DAYS, invoicedOn: null })).toBeNull();
  });

  it('counts over month ends, leap days and changes of clock', () => {
    expect(addDays('2028-02-28', 2)).toBe('2028-03-01');
    expect(addDays('2026-03-28', 2)).toBe('2026-03-30');
    expect(daysBetween('2026-12-31', '2027-01-01')).toBe(1);
    expect(creditDueOn({ daysToCredit: 21 }, '2026-05-07')).toBe('2026-05-28');
    expect(() => addDays('2026-02-30x', 1)).toThrow(RangeError);
  });

  it('the credit to expect is the charge less restocking', () => {
    expect(expectedCredit({ restockingPercent: '10' }, '31.20')).toBe('28.08');
    expect(expectedCredit({ restockingPercent: '0' }, '19.80')).toBe('19.80');
    expect(expectedCredit({ restockingPercent: '15' }, '0.03')).toBe('0.03');
  });
});

describe('due to return', () => {
  const unit = {
    place: 'set-aside',
    arrivalReason: 'ordered',
    isOpened: false,
    lastReturnOn: '2026-06-23',
    terms: { unopenedOnly: true },
  } as const;
  const today = { today: '2026-06-09', leadDays: 5, isProofPassed: false };
  it.each([
    ['nothing yet', {}, {}, 'not-yet', false],
    ['the repair is proved', {}, { isProofPassed: true }, 'proof-passed', true],
    ['six days before', {}, { today: '2026-06-17' }, 'not-yet', false],
    ['five days before', {}, { today: '2026-06-18' }, 'date-near', true],
    ['on the last day', {}, { today: '2026-06-23' }, 'date-near', true],
    ['a day late', {}, { today: '2026-06-24', isProofPassed: true }, 'date-passed', true],
    ['wrong piece', { arrivalReason: 'wrong' }, {}, 'wrong-or-damaged', true],
    ['no date known', { lastReturnOn: null }, { today: '2030-01-01' }, 'not-yet', false],
    ['not here', { place: 'fitted' }, { isProofPassed: true }, 'not-here', false],
    ['on the shelf to go', { place: 'to-return' }, { isProofPassed: true }, 'proof-passed', true],
  ] as const)('%s', (_name, unitOver, contextOver, why, due) => {
    expect(dueToReturn({ ...unit, ...unitOver }, { ...today, ...contextOver })).toMatchObject({ why, due });
  });

  it('says what stands against it', () => {
    const against = (over: object, on = '2026-06-09'): string | null => dueToReturn({ ...unit, ...over }, { ...today, today: on }).against;
    expect(against({ isOpened: true })).toContain('unopened ones only');
    expect(against({ isOpened: true, terms: { unopenedOnly: false } })).toBeNull();
    expect(against({ isOpened: true, arrivalReason: 'damaged' })).toBeNull();
    expect(against({}, '2026-06-25')).toContain('passed 2 days ago');
  });
});

describe('money at suppliers', () => {
  const unit = (supplierId: string, place: ExposedUnit['place'], open: string, over: Partial<ExposedUnit> = {}): ExposedUnit => ({
    supplierId,
    place,
    open,
    handedOverOn: null,
    creditDueOn: null,
    lastReturnOn: null,
    ...over,
  });
  // A shelf worked out by hand: two late credits, one in time, one to go tomorrow, one credited twice.
  const rows = exposure(
    [
      unit('norrow', 'handed-over', '41.00', { handedOverOn: '2026-05-07', creditDueOn: '2026-05-28' }),
      unit('norrow', 'handed-over', '19.80', { handedOverOn: '2026-05-28', creditDueOn: '2026-06-18' }),
      unit('norrow', 'to-return', '26.10', { lastReturnOn: '2026-06-11' }),
      unit('norrow', 'to-return', '12.40', { lastReturnOn: '2026-06-26' }),
      unit('kestle', 'handed-over', '58.60', { handedOverOn: '2026-04-23', creditDueOn: '2026-05-23' }),
      unit('kestle', 'gone-for-good', '-31.20'),
      unit('kestle', 'fitted', '99.00'),
      unit('halfmoon', 'handed-over', '0'),
    ],
    { today: '2026-06-09', soonDays: 7 },
  );

  it('by supplier, age and what leaves soon', () => {
    expect(rows.map((row) => [row.supplierId, row.atSupplier, row.late, row.onShelf, row.leavesSoon, row.weOwe])).toEqual([
      ['norrow', '60.80', '41.00', '38.50', '26.10', '0.00'],
      ['kestle', '58.60', '58.60', '0.00', '0.00', '31.20'],
    ]);
    expect(rows[0]?.byAge).toEqual({ 'to-7': '0.00', 'to-14': '19.80', 'to-30': '0.00', 'to-60': '41.00', 'over-60': '0.00' });
  });
});
