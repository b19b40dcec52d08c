import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { MOST_ACTIONS, readCardActions } from './read-card-actions.ts';

const sender = { card: '0f0f6d0e-5a53-4f0a-9a0c-0c1f2b7f6a11', staffId: '1f0f6d0e-5a53-4f0a-9a0c-0c1f2b7f6a11' };
const action = {
  id: '3F0F6D0E-5A53-4F0A-9A0C-0C1F2B7F6A11',
  kind: 'record',
  step: 'drained',
  value: { litres: 4.6 },
  readAt: '2026-06-09T09:24:00+02:00',
};

describe('readCardActions', () => {
  it('keeps ids in small letters and times in UTC, so that a repeat is the same text', () => {
    expect(readCardActions({ actions: [action] }, sender)).toEqual({
      ok: true,
      actions: [
        {
          id: '3f0f6d0e-5a53-4f0a-9a0c-0c1f2b7f6a11',
          card: sender.card,
          kind: 'record',
          step: 'drained',
          value: { litres: 4.6 },
          readAt: '2026-06-09T07:24:00.000Z',
          by: sender.staffId,
          byProof: 'session',
        },
      ],
    });
  });

  it('takes another person’s action as said to be theirs, whatever proof is claimed', () => {
    const by = '2f0f6d0e-5a53-4f0a-9a0c-0c1f2b7f6a11';
    expect(readCardActions({ actions: [{ ...action, by, byProof: 'session' }] }, sender)).toMatchObject({
      actions: [{ by, byProof: 'picked-offline' }],
    });
  });

  it('leaves the judgement of a kind, a step and a value to the card', () => {
    const odd = { ...action, kind: 'burn', step: 'elsewhere', value: ['x'] };
    expect(readCardActions({ actions: [odd] }, sender)).toMatchObject({ ok: true, actions: [{ kind: 'burn', value: ['x'] }] });
  });

  it('leaves out signs that no record can hold', () => {
    const value = { words: 'a\0b\uD800c', '\0key': ['\uDC00'] };
    expect(readCardActions({ actions: [{ ...action, value }] }, sender)).toMatchObject({
      actions: [{ value: { words: 'ab\uFFFDc', key: ['\uFFFD'] } }],
    });
  });

  it.each([
    ['no list', { actions: 'x' }, 'actions'],
    ['no body', null, 'actions'],
    ['too many', { actions: Array.from({ length: MOST_ACTIONS + 1 }, () => action) }, 'actions'],
    ['an id that is none', { actions: [{ ...action, id: '7' }] }, 'actions.0.id'],
    ['a kind that is no word', { actions: [{ ...action, kind: 7 }] }, 'actions.0.kind'],
    ['a step that is no word', { actions: [{ ...action, step: '../x' }] }, 'actions.0.step'],
    ['a time without offset', { actions: [{ ...action, readAt: '2026-06-09T09:24:00' }] }, 'actions.0.readAt'],
    ['a day that is none', { actions: [{ ...action, readAt: '2026-13-09T09:24:00Z' }] }, 'actions.0.readAt'],
    ['a clock of another age', { actions: [{ ...action, readAt: '0001-01-01T00:00:00Z' }] }, 'actions.0.readAt'],
    ['a person that is none', { actions: [{ ...action, by: 'me' }] }, 'actions.0.by'],
    ['a count below zero', { actions: [{ ...action, deviceSeq: -1 }] }, 'actions.0.deviceSeq'],
    ['a field of nobody’s', { actions: [{ ...action, colour: 'green' }] }, 'actions.0.colour'],
  ])('refuses %s', (_what, body, field) => {
    expect(readCardActions(body, sender)).toMatchObject({ ok: false, errors: [{ field }] });
  });

  it('refuses a value nested too deep', () => {
    let value: unknown = 1;
    for (let depth = 0; depth < 5000; depth += 1) value = [value];
    expect(readCardActions({ actions: [{ ...action, value }] }, sender)).toMatchObject({ errors: [{ field: 'actions.0.value' }] });
  });

  it('never throws, whatever arrives', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), (body, one) => {
        expect(typeof readCardActions(body, sender).ok).toBe('boolean');
        expect(typeof readCardActions({ actions: [one] }, sender).ok).toBe('boolean');
      }),
    );
  });
});
