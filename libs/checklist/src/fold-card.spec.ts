import { describe, expect, it } from '@jest/globals';
import {
  applyAction,
  canDo,
  COOLANT_CHANGE,
  DIAGNOSIS_VISIT,
  emptyCard,
  foldCard,
  nextSteps,
  stageAfter,
  THERMOSTAT_JOB,
} from './index.ts';
import { tap } from './testing/tap.ts';
import { COLD, TORQUE, untilDrained, untilFilled, untilKeysOut, untilRunHot } from './testing/whole-job.ts';

describe('a thermostat job from the keys on the hook to the level next morning', () => {
  it('goes through its stages, keeps its figures and raises no difference', () => {
    const stages = new Set<string>();
    const card = untilKeysOut().reduce((now, action) => {
      const next = applyAction(now, action);
      stages.add(next.stage);
      return next;
    }, emptyCard(THERMOSTAT_JOB));
    expect(card.differences).toEqual([]);
    expect([...stages]).toEqual(['standing', 'opened', 'closed-up', 'filled', 'run-hot', 'settling', 'keys-out']);
    expect(Object.values(card.holds).map((hold) => hold.state)).toEqual(['passed', 'passed', 'passed', 'passed', 'passed']);
    expect(card.facts).toMatchObject({
      filledProductL: 1.15,
      filledWaterL: 1.15,
      filledKeptL: 3.2,
      filledL: 5.5,
      jugsPoured: 3,
      variant: 'NR-4410',
      levels: { missingOnArrivalL: 400 },
      lists: { accessItems: ['Air duct', 'Battery cover'], leftOff: ['Battery cover'] },
      choices: { fan: { choice: 'not-reached', asked: { outsideC: 8, minutes: 15 } } },
    });
    const litres = (name: string): number | undefined => card.facts.numbers[name]?.value;
    expect([litres('drainedL'), litres('keptL'), litres('wasteL'), litres('wasteBookedL'), litres('missingOnArrivalL')]).toEqual([
      5.2, 3.2, 2, 2, 0.4,
    ]);
    expect(card.checks).toEqual([]);
  });

  it('owes level and log after the keys, and is squared when they are done', () => {
    const out = foldCard(THERMOSTAT_JOB, untilKeysOut());
    expect(out.debts.map(({ kind, state }) => [kind, state])).toEqual([
      ['level-check', 'open'],
      ['after-log', 'open'],
    ]);
    const keysAt = Date.parse(out.steps['keys-out']?.readAt ?? '');
    expect(out.debts[0]?.due).toBe(new Date(keysAt + 3 * 86_400_000).toISOString());
    expect(stageAfter(out)).toBe('keys-out');
    const level = applyAction(out, tap('record', 'cold-level', { belowMarkMl: 60, productMl: 30, waterMl: 30 }));
    const log = applyAction(level, tap('let-go', 'after-log', { reason: 'sold the next day' }));
    expect(log.debts.map(({ state }) => state)).toEqual(['done', 'let-go']);
    expect(log.stage).toBe('keys-out');
    expect(stageAfter(log)).toBe('squared');
    expect(stageAfter(log, [{ state: 'open' }])).toBe('keys-out');
    expect(log.facts.fills.at(-1)).toMatchObject({ stage: 'next-morning', productMl: 30, waterMl: 30 });
  });

  it('reaches settled when the level is right when cold and the strength is read', () => {
    const base = [...untilRunHot(), tap('tick', 'left-to-cool')];
    const level = tap('record', 'cold-level', { belowMarkMl: 0 });
    const strength = tap('record', 'strength', { value: -31, instrument: 'refractometer' });
    expect(foldCard(THERMOSTAT_JOB, [...base, level]).stage).toBe('settling');
    expect(foldCard(THERMOSTAT_JOB, [...base, strength, level]).stage).toBe('settled');
    expect(foldCard(THERMOSTAT_JOB, [...base, level, strength, tap('tick', 'keys-out')]).debts.map((d) => d.kind)).toEqual([
      'waste',
      'after-log',
    ]);
  });

  it('lets a car go unrepaired, without proof and without debts', () => {
    const card = foldCard(THERMOSTAT_JOB, [tap('tick', 'keys-tagged'), tap('tick', 'keys-out')]);
    expect([card.stage, card.debts, card.differences]).toEqual(['keys-out', [], []]);
    expect(stageAfter(card)).toBe('squared');
  });

  it('keeps the keys until the proof is there', () => {
    const opened = foldCard(THERMOSTAT_JOB, [...untilFilled(), tap('tick', 'keys-out')]);
    expect(opened.differences.map((d) => d.code)).toEqual(['behind-hold']);
    expect(opened.stage).toBe('filled');
    const reasons = ['heater-hoses', 'radiator-side', 'no-leak'].map((step) =>
      tap('pass-without', step, { reason: 'customer-cannot-wait' }),
    );
    const run = [tap('pass', 'tools-counted', { counted: 3, of: 3 }), ...reasons];
    const cold = foldCard(THERMOSTAT_JOB, [...untilFilled(), ...run, tap('tick', 'keys-out')]);
    expect(cold.differences[0]?.why).toContain("From 'Filled' the car can't leave");
    const hot = foldCard(THERMOSTAT_JOB, [...untilFilled(), ...run, tap('tick', 'run-hot'), tap('tick', 'keys-out')]);
    expect([hot.stage, hot.holds.proof?.state, hot.holds.proof?.why]).toEqual(['keys-out', 'passed-without', 'customer-cannot-wait']);
  });
});

describe('going back', () => {
  const reason = { reason: 'weeps at the housing' };

  it('opens again only cold: the engine has run, so the old reading is spent', () => {
    const hot = foldCard(THERMOSTAT_JOB, untilRunHot());
    expect(hot.holds['safe-to-open']).toMatchObject({ state: 'passed', spent: true });
    const back = applyAction(hot, tap('go-back', 'card', { to: 'opened', ...reason }));
    expect(back.stage).toBe('run-hot');
    expect(canDo(back, 'drained').holds).toEqual(['safe-to-open']);
    expect(canDo(back, 'first-fill').holds).toEqual(['closed-and-torqued']);
    expect(canDo(back, 'keys-out').holds).toEqual(['proof']);
    expect(back.holds['variant-settled']?.state).toBe('passed');
    const again = [tap('pass', 'measured-cold', COLD), tap('record', 'drained', { litres: 4.9 }), tap('record', 'kept', { litres: 4.9 })];
    const opened = again.reduce(applyAction, back);
    expect(opened.stage).toBe('opened');
    expect(opened.facts.numbers['drainedL']?.value).toBe(10.1);
    expect(opened.facts.numbers['wasteL']?.value).toBe(2);
    const closed = [tap('pass', 'torqued', TORQUE), tap('pour-jug', 'first-fill', { keptMl: 4900 }), tap('tick', 'first-fill')].reduce(
      applyAction,
      opened,
    );
    expect(closed.stage).toBe('filled');
    expect(closed.facts.filledKeptL).toBe(8.1);
    expect(closed.steps['drained']?.history).toHaveLength(2);
  });

  it('to filled keeps what is closed and asks for tools and proof again', () => {
    const back = foldCard(THERMOSTAT_JOB, [...untilRunHot(), tap('go-back', 'card', { to: 'filled', reason: 'air in the heater' })]);
    expect(back.stage).toBe('filled');
    expect(back.holds['closed-and-torqued']?.state).toBe('passed');
    expect(canDo(back, 'run-hot').holds).toEqual(['clear-of-tools-and-fan']);
  });

  it('is refused where the job can not go back, needs a reason, and not twice', () => {
    const codes = (actions: readonly unknown[]): readonly string[] => foldCard(THERMOSTAT_JOB, actions).differences.map((d) => d.code);
    expect(codes([...untilDrained(), tap('go-back', 'card', { to: 'opened', ...reason })])).toEqual(['not-now']);
    expect(codes([...untilKeysOut(), tap('go-back', 'card', { to: 'opened', ...reason })])).toEqual(['not-now']);
    expect(codes([...untilFilled(), tap('go-back', 'card', { to: 'opened' })])).toEqual(['needs-reason']);
    const back = tap('go-back', 'card', { to: 'opened', ...reason });
    expect(codes([...untilFilled(), back, tap('go-back', 'card', { to: 'opened', ...reason })])).toEqual(['already-done']);
  });

  it('can be taken back while nothing has been done again', () => {
    const filled = untilFilled();
    const back = tap('go-back', 'card', { to: 'opened', ...reason });
    const undo = tap('take-back', 'card', { of: back.id, reason: 'wrong card' });
    const undone = foldCard(THERMOSTAT_JOB, [...filled, back, undo]);
    expect(undone.differences).toEqual([]);
    expect(undone.steps['drained']?.state).toBe('done');
    expect(undone.stage).toBe('filled');
    const late = foldCard(THERMOSTAT_JOB, [...filled, back, tap('pass', 'measured-cold', COLD), undo]);
    expect(late.differences.map((d) => d.code)).toEqual(['not-now']);
  });
});

describe('the other templates', () => {
  it('a coolant change runs through without a variant', () => {
    const skip = new Set(['variant', 'removed-part', 'recess-clean', 'fitted', 'housing-off']);
    const card = foldCard(
      COOLANT_CHANGE,
      untilKeysOut().filter((action) => !skip.has(action.step)),
    );
    expect(card.differences).toEqual([]);
    expect(card.stage).toBe('keys-out');
    expect(card.holds['variant-settled']).toBeUndefined();
  });

  it('on a diagnosis the cap comes off only cold, also after the log', () => {
    const before = [tap('tick', 'keys-tagged'), tap('pass', 'measured-cold', COLD), tap('tick', 'before-log')];
    const card = foldCard(DIAGNOSIS_VISIT, before);
    expect(canDo(card, 'pressure-test').why[0]).toContain('The engine has run since it was measured');
    const again = applyAction(card, tap('pass', 'measured-cold', COLD));
    expect(canDo(again, 'pressure-test').can).toBe(true);
    const home = [
      tap('record', 'pressure-test', { choice: 'both-held' }),
      tap('record', 'verdict', { choice: 'opens-early' }),
      tap('tick', 'keys-out'),
    ];
    expect(home.reduce(applyAction, again)).toMatchObject({ stage: 'keys-out', differences: [], debts: [] });
  });

  it('a hybrid stops the card, but the keys can go', () => {
    const card = foldCard(THERMOSTAT_JOB, [tap('tick', 'keys-tagged'), tap('record', 'thermostat-kind', { choice: 'hybrid' })]);
    expect(canDo(card, 'measured-cold').why.join()).toContain('Trained people only');
    expect(applyAction(card, tap('pass', 'measured-cold', COLD)).differences.map((d) => d.code)).toEqual(['not-now']);
    expect(card.checks.join()).toContain('Trained people only');
    expect(applyAction(card, tap('tick', 'keys-out')).stage).toBe('keys-out');
  });
});

describe('what comes next', () => {
  it('shows what can be done and what figures are missing', () => {
    const card = emptyCard(THERMOSTAT_JOB);
    expect(nextSteps(card)[0]).toMatchObject({ can: true, step: { key: 'keys-tagged' } });
    expect(
      nextSteps(card)
        .filter((next) => !next.can)
        .map((next) => next.step.key),
    ).toContain('drained');
    expect(canDo(card, 'tray', { figures: ['tray'] })).toEqual({ can: true, why: [], holds: [], missingFigures: ['drainVolume'] });
    expect(canDo(card, 'nonsense').can).toBe(false);
    const done = foldCard(THERMOSTAT_JOB, [tap('tick', 'keys-tagged')]);
    expect(canDo(done, 'keys-tagged').why).toEqual(['Already done by jory.']);
    expect(nextSteps(done).some((next) => next.step.key === 'keys-tagged')).toBe(false);
  });
});
