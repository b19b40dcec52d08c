import { describe, expect, it } from '@jest/globals';
import { canChangeStage, customerSentence, DIAGNOSIS_VISIT, STAGE_MOVES, STAGES, stagesOf, THERMOSTAT_JOB } from '../index.ts';

const person = { by: 'person' } as const;

describe('moves of a job', () => {
  it('every stage can be reached from the first, and only squared and fell-through end it for a person', () => {
    const reached = new Set<string>(['spoken-of']);
    STAGES.forEach(() => STAGE_MOVES.filter((move) => reached.has(move.from)).forEach((move) => reached.add(move.to)));
    expect([...reached].sort()).toEqual([...STAGES].sort());
    const ends = STAGES.filter((stage) => !STAGE_MOVES.some((m) => m.from === stage && m.kind !== 'by-the-tool'));
    expect(ends).toEqual(['keys-out', 'squared', 'fell-through']);
  });

  it.each([
    ['spoken-of', 'expected', true],
    ['standing', 'opened', true],
    ['standing', 'closed-up', false],
    ['opened', 'keys-out', false],
    ['closed-up', 'keys-out', false],
    ['filled', 'keys-out', false],
    ['standing', 'keys-out', true],
    ['settled', 'opened', true],
    ['settled', 'filled', false],
    ['keys-out', 'opened', false],
    ['standing', 'fell-through', false],
    ['expected', 'fell-through', true],
    ['opened', 'opened', false],
  ] as const)('%s to %s: %s', (from, to, can) => {
    expect(canChangeStage(from, to, person).can).toBe(can);
  });

  it('an early end needs a date for what is owed', () => {
    expect(canChangeStage('run-hot', 'keys-out', person)).toMatchObject({ can: false });
    expect(canChangeStage('run-hot', 'keys-out', { ...person, hasDatedDebt: true }).can).toBe(true);
    expect(canChangeStage('settling', 'keys-out', { ...person, hasDatedDebt: true }).can).toBe(true);
  });

  it('squared is set by the tool alone, when nothing is owed', () => {
    expect(canChangeStage('keys-out', 'squared', person).can).toBe(false);
    expect(canChangeStage('keys-out', 'squared', { by: 'tool', openDebts: 2 })).toEqual({ can: false, why: 'Not squared: 2 still owed.' });
    expect(canChangeStage('keys-out', 'squared', { by: 'tool' }).can).toBe(true);
    expect(canChangeStage('squared', 'keys-out', { by: 'tool' }).can).toBe(false);
    expect(canChangeStage('squared', 'keys-out', { by: 'tool', openDebts: 1 }).can).toBe(true);
  });

  it('a smaller template steps over the stages it lacks', () => {
    const stages = stagesOf(DIAGNOSIS_VISIT);
    expect(stages).toEqual(['spoken-of', 'expected', 'standing', 'keys-out', 'squared']);
    expect(canChangeStage('expected', 'standing', { ...person, stages }).can).toBe(true);
    expect(canChangeStage('filled', 'settling', { ...person, stages: stages }).can).toBe(true);
    expect(canChangeStage('filled', 'settling', { ...person, stages: stagesOf(THERMOSTAT_JOB) })).toEqual({
      can: false,
      why: "From 'Filled' the job can't go to 'Settling'. Before it: Run hot.",
    });
  });
});

describe('one sentence for the customer', () => {
  const part = { kind: 'part', since: '2026-06-09T10:00:00+02:00', until: '2026-06-12T00:00:00+02:00' } as const;
  const yes = { kind: 'yes', since: '2026-06-09T09:00:00+02:00', until: null } as const;
  it.each([
    ['standing', [], 'Your car is here with us.'],
    ['opened', [part], 'Your car is being worked on; we are waiting for a part, expected by 12 June.'],
    ['standing', [part, yes], 'Your car is here with us; we are waiting for your yes.'],
    ['keys-out', [part], 'Your car is back with you.'],
    ['standing', [{ ...part, until: 'soon' }], 'Your car is here with us; we are waiting for a part.'],
  ] as const)('%s', (stage, waits, sentence) => {
    expect(customerSentence(stage, waits)).toBe(sentence);
  });

  it('is one sentence at every stage', () => {
    for (const stage of STAGES) expect(customerSentence(stage, [])).toMatch(/^[A-Z][^.]+\.$/);
  });
});
