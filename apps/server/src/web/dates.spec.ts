import { describe, expect, it } from '@jest/globals';
import { dateText, dateTimeText, dayColumn, dayText, instantAt, isoDay, plainDate, timeText } from './dates.ts';

describe('dayColumn', () => {
  it.each(['1970-01-01', '2026-02-28', '2199-12-31'])('takes %s', (day) => {
    expect(dayColumn(day)?.toISOString()).toBe(`${day}T00:00:00.000Z`);
  });

  it.each(['1969-12-31', '2200-01-01', '9999-12-31', '0001-01-01', '2026-02-29', '2026-13-01', 'soon', ''])('refuses %s', (day) => {
    expect(dayColumn(day)).toBeUndefined();
  });
});

describe('instantAt', () => {
  it('is an instant of that place', () => {
    expect(instantAt('2026-06-09', '08:50', 'Europe/Dublin')?.toISOString()).toBe('2026-06-09T07:50:00.000Z');
  });

  it.each([
    ['1969-12-31', '23:59'],
    ['2200-01-01', '00:00'],
    ['2026-03-29', '01:30'], // the hour that the clocks skip
    ['2026-06-09', '24:30'],
  ])('refuses %s %s', (day, time) => {
    expect(instantAt(day, time, 'Europe/Dublin')).toBeUndefined();
  });
});

describe('a time in words', () => {
  const at = new Date('2026-06-08T23:05:00Z');
  it('is that of the place', () => {
    expect(dateText(at, 'Europe/Dublin')).toBe('9 Jun 2026');
    expect(dayText(at, 'Europe/Dublin')).toBe('Tue 9 June');
    expect(timeText(at, 'Europe/Dublin')).toBe('00:05');
    expect(dateTimeText(at, 'Europe/Dublin')).toBe('9 Jun, 00:05');
    expect(isoDay(at, 'Europe/Dublin')).toBe('2026-06-09');
    expect(isoDay(at, 'America/Chicago')).toBe('2026-06-08');
    expect(plainDate(new Date('2026-06-09T00:00:00Z'))).toBe('9 Jun 2026');
  });
});
