import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { closedPhaseTempC, closedPhaseTimeS } from './closed-phase.ts';

// Q = 6 kW, UA = 0.018 kW/K, C = 60 kJ/K, air and start 15 °C (computed from the closed form).
const PHASE = { startC: 15, airC: 15, heatKPerS: 6 / 60, lossPerS: 0.018 / 60 };

describe('a shut thermostat at steady heat', () => {
  it('is at 50 °C after 370 s and at 87 °C after 811 s', () => {
    expect(closedPhaseTempC(PHASE, 370)).toBeCloseTo(50, 1);
    expect(closedPhaseTimeS(PHASE, 87)).toBeCloseTo(811, 0);
    expect(closedPhaseTimeS(PHASE, 50)).toBeCloseTo(370, 0);
  });

  it('never passes its balance, and a loss-free one climbs straight', () => {
    expect(closedPhaseTimeS({ ...PHASE, lossPerS: 0.002 }, 87)).toBeNull();
    expect(closedPhaseTempC({ ...PHASE, lossPerS: 0 }, 100)).toBeCloseTo(25, 9);
    expect(closedPhaseTimeS({ ...PHASE, lossPerS: 0 }, 25)).toBeCloseTo(100, 9);
    expect(closedPhaseTimeS(PHASE, 10)).toBe(0);
  });

  it('takes the time back that it gave', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3000, noNaN: true }), fc.double({ min: 0.0001, max: 0.003, noNaN: true }), (timeS, lossPerS) => {
        const phase = { ...PHASE, lossPerS };
        const tempC = closedPhaseTempC(phase, timeS);
        fc.pre(phase.airC + phase.heatKPerS / lossPerS - tempC > 0.01);
        expect(closedPhaseTimeS(phase, tempC)).toBeCloseTo(timeS, 3);
      }),
    );
  });
});
