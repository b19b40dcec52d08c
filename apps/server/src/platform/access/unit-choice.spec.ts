import { describe, expect, it } from '@jest/globals';
import { unitChoice } from './unit-choice.ts';

const METRIC = { temperature: 'C', volume: 'L', pressure: 'kPa', torque: 'Nm' };

describe('unitChoice', () => {
  it('keeps what was chosen', () => {
    const chosen = { temperature: 'F', volume: 'qt', pressure: 'psi', torque: 'lbf-ft' };
    expect(unitChoice(chosen)).toEqual(chosen);
  });

  it.each([[null], [{}], ['F'], [[]], [{ temperature: 'K', volume: 1, pressure: null, colour: 'red' }]])('is metric for %j', (stored) => {
    expect(unitChoice(stored)).toEqual(METRIC);
  });
});
