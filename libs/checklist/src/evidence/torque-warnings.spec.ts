import { describe, expect, it } from '@jest/globals';
import { type TorqueEntry, torqueInNm, torqueWarnings } from '../index.ts';

const ENTRY: TorqueEntry = {
  setAt: 10,
  unit: 'Nm',
  tightened: 2,
  of: 2,
  inSequence: true,
  document: 'D',
  page: '1',
  thread: null,
  then: null,
};
const warn = (over: Partial<TorqueEntry>): string => torqueWarnings({ ...ENTRY, ...over }).join(' ');

describe('torque in newton metres', () => {
  // 10 lbf·ft = 13.6 Nm and 90 lbf·in = 10.2 Nm: unit conversion, computed from the exact pound-foot.
  it.each([
    [10, 'lbf·ft', 13.6],
    [90, 'lbf·in', 10.2],
    [10, 'Nm', 10],
  ] as const)('%d %s', (value, unit, nm) => {
    expect(torqueInNm(value, unit)).toBeCloseTo(nm, 1);
  });
});

describe('check the entry', () => {
  // Published class 8.8 bolt values, friction 0.125 to 0.14 (read): M6 9 to 10, M8 21 to 25, M10 42 to 49 Nm. None may raise a doubt.
  it.each([
    ['M6', 9],
    ['M6', 10],
    ['M8', 21],
    ['M8', 25],
    ['M10', 42],
    ['M10', 49],
  ])('%s at %d Nm raises nothing', (thread, setAt) => {
    expect(warn({ thread, setAt })).toBe('');
  });

  // Published thermostat housing values of heavy diesels (read): 17 lbf·ft, 30 to 35 lbf·ft.
  it.each([17, 30, 35])('%d lbf·ft with an unknown thread raises nothing', (setAt) => {
    expect(warn({ setAt, unit: 'lbf·ft' })).toBe('');
  });

  it('asks whether inch-pounds were meant', () => {
    expect(warn({ thread: 'M6', setAt: 90 })).toBe(
      '90 Nm is outside what M6 usually takes (4 to 15 Nm): check the entry. 90 lbf·in would be 10.2 Nm: is the unit right?',
    );
  });

  it('asks whether newton metres were meant', () => {
    expect(warn({ setAt: 60, unit: 'lbf·ft' })).toContain('60 Nm would be usual: is the unit right?');
  });

  it('doubts without a guess where no unit makes it usual', () => {
    expect(warn({ thread: 'M6', setAt: 0.5 })).toBe('0.5 Nm is outside what M6 usually takes (4 to 15 Nm): check the entry.');
    expect(warn({ thread: 'constructor', setAt: 71 })).toContain('a cooling-system fastener');
  });

  it('warns of first use and of a wrench past its calibration', () => {
    expect(torqueWarnings(ENTRY, { usedBefore: false, calibrationDueInDays: -3 })).toEqual([
      'First time this value is used here: have a second look at the manual.',
      "The wrench's calibration is 3 days overdue.",
    ]);
    expect(torqueWarnings(ENTRY, { usedBefore: true, calibrationDueInDays: 0 })).toEqual([]);
  });
});
