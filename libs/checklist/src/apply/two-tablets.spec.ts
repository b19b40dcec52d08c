import { describe, expect, it } from '@jest/globals';
import { applyAction, foldCard, THERMOSTAT_JOB } from '../index.ts';
import { tap } from '../testing/tap.ts';
import { untilDrained, untilFilled } from '../testing/whole-job.ts';

const elsewhere = { deviceId: 'tablet-2', by: 'ines' };

describe('two tablets on one card', () => {
  it('the same said twice agrees: both are in the history, nothing to look at', () => {
    const card = foldCard(THERMOSTAT_JOB, [tap('tick', 'tray'), tap('tick', 'tray', null, elsewhere)]);
    expect(card.differences).toEqual([]);
    expect(card.steps['tray']).toMatchObject({ state: 'done', by: 'jory' });
    expect(card.steps['tray']?.history).toHaveLength(2);
  });

  it('two figures for one thing: the first received stands, the other is shown whole', () => {
    const other = tap('record', 'drained', { litres: 5.6 }, elsewhere);
    const card = foldCard(THERMOSTAT_JOB, [...untilDrained(), other]);
    expect(card.facts.numbers['drainedL']?.value).toBe(5.2);
    expect(card.differences).toMatchObject([{ code: 'already-done', action: other, settled: null }]);
    const settled = applyAction(card, tap('settle-difference', 'card', { of: other.id, words: 'spilt some, 5.2 is right' }));
    expect(settled.differences).toMatchObject([{ settled: { by: 'jory', words: 'spilt some, 5.2 is right' } }]);
  });

  it('a jug that comes in after the fill was closed is counted and shown', () => {
    const card = foldCard(THERMOSTAT_JOB, [...untilFilled(), tap('pour-jug', 'first-fill', { waterMl: 500 }, elsewhere)]);
    expect(card.facts.filledWaterL).toBe(1.5);
    expect(card.differences.map((d) => d.code)).toEqual(['already-done']);
  });

  it('jugs and a whole fill are not counted twice', () => {
    const whole = tap('record', 'first-fill', { productMl: 1000, waterMl: 1000, keptMl: 3200 }, elsewhere);
    const card = foldCard(THERMOSTAT_JOB, [...untilFilled().filter((a) => !(a.step === 'first-fill' && a.kind === 'tick')), whole]);
    expect(card.facts.filledL).toBe(5.2);
    expect(card.differences.map((d) => d.code)).toEqual(['already-done']);
  });

  it('done here, not applicable there: a person looks', () => {
    const no = tap('not-applicable', 'covered', { reason: 'engine behind the seats' }, elsewhere);
    expect(foldCard(THERMOSTAT_JOB, [tap('tick', 'covered'), no]).differences.map((d) => d.code)).toEqual(['already-done']);
    expect(foldCard(THERMOSTAT_JOB, [no, tap('tick', 'covered')]).differences.map((d) => d.code)).toEqual(['already-done']);
    const twice = foldCard(THERMOSTAT_JOB, [no, { ...no, id: 'again' }]);
    expect(twice.differences).toEqual([]);
    expect(twice.steps['covered']).toMatchObject({ state: 'not-applicable', why: 'engine behind the seats' });
    expect(foldCard(THERMOSTAT_JOB, [tap('not-applicable', 'covered')]).differences.map((d) => d.code)).toEqual(['needs-reason']);
  });

  it('one number, two contents: the first counts, the second is kept', () => {
    const first = tap('tick', 'tray');
    const second = { ...first, step: 'covered' };
    const card = foldCard(THERMOSTAT_JOB, [first, second, second, first]);
    expect(card.differences).toMatchObject([{ code: 'same-id', action: second }]);
    expect(card.steps['covered']?.state).toBe('open');
  });

  it('keys in another order are the same action', () => {
    const first = tap('record', 'odometer', { value: 10, about: true });
    const turned = Object.fromEntries(Object.entries({ ...first, value: { about: true, value: 10 } }).reverse());
    expect(foldCard(THERMOSTAT_JOB, [first, turned]).differences).toEqual([]);
  });

  it('a name picked offline is said to be theirs until they confirm it', () => {
    const offline = tap('tick', 'tray', null, { byProof: 'picked-offline' });
    const card = foldCard(THERMOSTAT_JOB, [offline]);
    expect(card.steps['tray']?.history[0]?.byProof).toBe('picked-offline');
    const byOther = applyAction(card, tap('confirm-name', 'card', { of: offline.id }, { by: 'ines' }));
    expect(byOther.differences.map((d) => d.code)).toEqual(['bad-value']);
    const confirmed = applyAction(card, tap('confirm-name', 'card', { of: offline.id }));
    expect(confirmed.steps['tray']?.history[0]?.byProof).toBe('confirmed');
    expect(confirmed.differences).toEqual([]);
  });
});

describe('beside the steps', () => {
  it('notes, photos, findings and waits are kept whatever is shut', () => {
    const wait = tap('wait', 'card', { for: 'part', who: 'Norrow Parts', until: '2026-06-12', words: 'second housing' });
    const told = [
      tap('note', 'drained', { words: 'smells of fuel' }),
      tap('photo', 'card', { photo: 'p1' }),
      tap('finding', 'fitting', { words: 'Top hose cracked', severity: 'soon', photo: 'p2' }),
      wait,
    ];
    const card = foldCard(THERMOSTAT_JOB, told);
    expect(card.differences).toEqual([]);
    expect(card.findings).toMatchObject([{ words: 'Top hose cracked', severity: 'soon', step: 'fitting' }]);
    expect(card.waits).toMatchObject([{ kind: 'part', until: '2026-06-12', who: 'Norrow Parts', actionId: wait.id }]);
    expect(applyAction(card, tap('wait-over', 'card', { of: wait.id })).waits).toEqual([]);
  });

  it('working time per person and phase; a step that is a timer is anybody’s', () => {
    const start = tap('start-timer', 'fitting');
    const stop = tap('stop-timer', 'fitting');
    const card = foldCard(THERMOSTAT_JOB, [start, tap('start-timer', 'fitting', null, elsewhere), stop]);
    expect(card.workTimes).toMatchObject([
      { by: 'jory', startedAt: start.readAt, stoppedAt: stop.readAt },
      { by: 'ines', stoppedAt: null },
    ]);
    expect(applyAction(card, tap('stop-timer', 'fitting')).differences.map((d) => d.code)).toEqual(['not-now']);
    const ready = [...untilFilled(), tap('pass', 'tools-counted', { counted: 1, of: 1 }), tap('start-timer', 'short-run')];
    const run = foldCard(THERMOSTAT_JOB, [...ready, tap('stop-timer', 'short-run', null, elsewhere)]);
    expect(run.steps['short-run']?.state).toBe('done');
    expect(run.differences).toEqual([]);
  });
});
