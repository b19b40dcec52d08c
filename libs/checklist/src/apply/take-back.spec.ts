import { describe, expect, it } from '@jest/globals';
import { type Action, applyAction, foldCard, THERMOSTAT_JOB } from '../index.ts';
import { secondsAfter, tap } from '../testing/tap.ts';
import { COLD, untilDrained } from '../testing/whole-job.ts';

const tick = tap('tick', 'tray');
const codes = (actions: readonly Action[]): readonly string[] => foldCard(THERMOSTAT_JOB, actions).differences.map((d) => d.code);

describe('take back', () => {
  it.each([
    ['at once', 0, {}, []],
    ['after 30 s', 30, {}, []],
    ['after 31 s', 31, {}, ['needs-reason']],
    ['before it was done: a clock is wrong', -5, {}, ['needs-reason']],
    ['on another tablet', 5, { deviceId: 'tablet-2' }, ['needs-reason']],
  ] as const)('%s', (_name, seconds, over, expected) => {
    const back = tap('take-back', 'tray', { of: tick.id }, { ...secondsAfter(tick, seconds), ...over });
    expect(codes([tick, back])).toEqual(expected);
  });

  it('leaves both entries, and the step open again', () => {
    const card = foldCard(THERMOSTAT_JOB, [tick, tap('take-back', 'tray', { of: tick.id, reason: 'wrong car' })]);
    expect(card.steps['tray']).toMatchObject({ state: 'taken-back', value: null, by: null });
    expect(card.steps['tray']?.history.map((entry) => entry.takenBack?.reason ?? entry.kind)).toEqual(['wrong car', 'take-back']);
    expect(applyAction(card, tap('tick', 'tray')).steps['tray']?.state).toBe('done');
  });

  it('without naming one takes the latest, and nothing twice', () => {
    const jugs = [tap('pour-jug', 'first-fill', { waterMl: 1000 }), tap('pour-jug', 'first-fill', { waterMl: 2000 })];
    const without = { reason: 'manual-silent' };
    const before = [
      ...untilDrained(),
      tap('pass', 'variant', { variant: 'A', basis: 'stamp' }),
      tap('pass-without', 'torqued', without),
      ...jugs,
    ];
    const card = foldCard(THERMOSTAT_JOB, [...before, tap('take-back', 'first-fill', { reason: 'other jug' })]);
    expect(card.facts.filledWaterL).toBe(1);
    expect(
      codes([tick, tap('take-back', 'tray', { of: tick.id, reason: 'a' }), tap('take-back', 'tray', { of: tick.id, reason: 'b' })]),
    ).toEqual(['nothing-to-take-back']);
  });

  it('of a hold point behind which something is done needs a reason at any time, and tells a person', () => {
    const done = untilDrained();
    const measured = done.find((action) => action.step === 'measured-cold');
    if (!measured) throw new Error('the job has no cold reading');
    const silent = tap('take-back', 'measured-cold', { of: measured.id }, secondsAfter(measured, 10));
    const refused = foldCard(THERMOSTAT_JOB, [...done, silent]);
    expect(refused.differences.map((d) => d.code)).toEqual(['needs-reason']);
    expect(refused.holds['safe-to-open']?.state).toBe('passed');
    const told = foldCard(THERMOSTAT_JOB, [...done, tap('take-back', 'measured-cold', { of: measured.id, reason: 'read on another car' })]);
    expect(told.holds['safe-to-open']?.state).toBe('shut');
    expect(told.differences).toMatchObject([{ code: 'hold-reopened' }]);
    expect(told.differences[0]?.why).toContain('Drain, measure what came out');
    expect(told.steps['drained']?.state).toBe('done');
  });

  it('of a hold point before anything is done behind it is free like any other', () => {
    const measured = tap('pass', 'measured-cold', COLD);
    expect(codes([measured, tap('take-back', 'measured-cold', { of: measured.id }, secondsAfter(measured, 10))])).toEqual([]);
  });

  it('brings a mistaken stage back', () => {
    const keys = tap('tick', 'keys-out');
    const card = foldCard(THERMOSTAT_JOB, [
      tap('tick', 'keys-tagged'),
      keys,
      tap('take-back', 'keys-out', { of: keys.id }, secondsAfter(keys, 4)),
    ]);
    expect(card.stage).toBe('standing');
  });
});
