import { describe, expect, it } from '@jest/globals';
import { type Action, foldCard, THERMOSTAT_JOB } from '#libs/checklist';
import { leadingStep } from './leading-step.ts';

let count = 0;
const action = (kind: Action['kind'], step: string, value: unknown = null): Action => ({
  id: `a${(count += 1)}`,
  card: 'c',
  kind,
  step,
  value,
  readAt: `2026-06-09T09:00:00Z`,
  by: 'jory',
  byProof: 'session',
});
const leading = (...actions: Action[]): string | undefined =>
  leadingStep(foldCard(THERMOSTAT_JOB, actions, { startStage: 'expected' }))?.key;
const COLD = { tempC: 30, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' };

describe('leadingStep', () => {
  it('begins with the first', () => {
    expect(leading()).toBe('keys-tagged');
  });

  it('goes on from where the work was, not back to what was left out', () => {
    expect(leading(action('tick', 'keys-tagged'), action('record', 'measured-cold', COLD))).toBe('level-on-arrival');
  });

  it('stays at a reading that did not pass', () => {
    expect(leading(action('record', 'measured-cold', { ...COLD, tempC: 70 }))).toBe('measured-cold');
  });

  it('skips what is behind a shut hold point', () => {
    expect(leading(action('tick', 'tray'))).toBe('removed-part');
  });

  it('is not led astray by a note', () => {
    expect(leading(action('tick', 'keys-tagged'), action('note', 'cold-level', { words: 'later' }))).toBe('odometer');
  });
});
