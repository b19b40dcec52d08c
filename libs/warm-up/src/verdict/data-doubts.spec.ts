import { describe, expect, it } from '@jest/globals';
import { analyseWarmUp } from '../analyse-warm-up.ts';
import { type Sample } from '../types/sample.ts';

/** A sound engine: 6 °C a minute from 15 °C, open at 88, driving and standing in turns. */
const sound: Sample[] = Array.from({ length: 1500 }, (_, timeS) => ({
  timeS,
  coolantC: Math.round(Math.min(88, 15 + timeS * 0.1)),
  speedKmh: timeS % 120 < 30 ? 0 : 60,
  intakeC: 18,
  ambientC: 15,
}));
const changed = (change: (sample: Sample, index: number) => number): Sample[] =>
  sound.map((sample, index) => ({ ...sample, coolantC: change(sample, index) }));

describe('readings that can’t be the coolant', () => {
  it.each([
    ['broken wire from the middle on', changed(({ coolantC }, index) => (index < 500 ? coolantC : -40)), /broken or shorted sensor wire/],
    ['broken wire throughout', changed(() => -40), /broken or shorted sensor wire/],
    ['a jump that stays', changed(({ coolantC }, index) => (index < 700 ? coolantC : coolantC - 30)), /jumps by 30 °C/],
    ['a loose plug', changed(({ coolantC }, index) => (index % 9 === 4 ? coolantC - 25 : coolantC)), /jump away from the curve and back/],
    ['jitter', changed(({ coolantC }, index) => coolantC + (index % 2 ? 5 : 0)), /differ by more than 3 °C/],
    ['a frozen value', changed(({ coolantC }, index) => (index < 300 ? coolantC : 45)), /stands at exactly 45/],
    ['colder than the air at the start', changed(({ coolantC }) => coolantC - 14), /colder than the air/],
  ])('%s', (_, samples, reason) => {
    const { verdict, reasons, openingC } = analyseWarmUp({ samples, nominalOpeningC: 88 });
    expect(verdict).toBe('doubtful-data');
    expect(reasons.join(' ')).toMatch(reason);
    expect(openingC).toBeNull();
  });

  it('takes a few glitches out instead', () => {
    const samples = changed(({ coolantC }, index) => (index % 200 === 50 ? 127 : coolantC));
    const { verdict, cleaned } = analyseWarmUp({ samples, nominalOpeningC: 88 });
    expect(verdict).toBe('normal');
    expect(cleaned.dropped).toEqual([{ reason: 'glitch', count: 8 }]);
  });

  it('sides with the intake sensor against a broken outside sensor', () => {
    const samples = sound.map((sample) => ({ ...sample, ambientC: -19 }));
    expect(analyseWarmUp({ samples, nominalOpeningC: 88 })).toMatchObject({ verdict: 'normal', airC: 15 });
  });
});
