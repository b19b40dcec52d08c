import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type ColdReading, safeToOpen } from './safe-to-open.ts';

const READING: ColdReading = {
  tempC: 47.5,
  expandedUncertaintyC: 2,
  method: 'contact',
  onBareMetal: false,
  pressure: 'none',
  hose: 'soft',
};

describe('safe to open: reading plus full U at most 50 °C, and no pressure', () => {
  it.each([
    ['47.5 ± 2.0', {}, 'safe', 49.5],
    ['47.5 ± 4.0', { expandedUncertaintyC: 4 }, 'unsure', 51.5],
    ['exactly at the limit, whatever binary fractions say', { tempC: 47.9, expandedUncertaintyC: 2.1 }, 'safe', 50],
    ['a hundredth over', { tempC: 48.01 }, 'unsure', 50.01],
    ['above by more than its doubt', { tempC: 52.1 }, 'too-hot', 54.1],
    ['above, within its doubt', { tempC: 51.9 }, 'unsure', 53.9],
    ['pressure', { tempC: 20, pressure: 'some' }, 'pressure', 22],
    ['not sure about pressure', { tempC: 20, pressure: 'unsure' }, 'pressure', 22],
    ['a hard hose', { tempC: 20, hose: 'hard' }, 'pressure', 22],
    ['hose out of reach, cap says none', { tempC: 20, hose: 'not-reached' }, 'safe', 22],
    ['infrared on rubber', { tempC: 20, method: 'infrared' }, 'safe', 22],
    ['infrared on bare metal', { tempC: 20, method: 'infrared', onBareMetal: true }, 'unsure', 22],
    ['contact probe on bare metal', { tempC: 20, onBareMetal: true }, 'safe', 22],
    ["the engine's own sensor", { tempC: 20, method: 'engine-sensor' }, 'unsure', 22],
    ['a doubt below nothing', { tempC: 20, expandedUncertaintyC: -1 }, 'unsure', 19],
  ] as const)('%s', (_name, over, verdict, upperC) => {
    expect(safeToOpen({ ...READING, ...over })).toMatchObject({ verdict, upperC });
  });

  it('says the sum as a person would write it', () => {
    expect(safeToOpen(READING).why).toBe('Cold enough: 47.5 + 2.0 = 49.5, at most 50. No pressure.');
    expect(safeToOpen({ ...READING, expandedUncertaintyC: 4 }).why).toContain('47.5 + 4.0 = 51.5, over 50');
    expect(safeToOpen({ ...READING, tempC: 48.01 }).why).toContain('48.01 + 2.0 = 50.01, over 50');
  });

  it('never says safe for anything but a cold, soft, pressureless system', () => {
    const any = fc.record({
      tempC: fc.double({ min: -60, max: 200 }),
      expandedUncertaintyC: fc.double({ min: -10, max: 20 }),
      method: fc.constantFrom('contact', 'infrared', 'engine-sensor', 'other'),
      onBareMetal: fc.boolean(),
      pressure: fc.constantFrom('none', 'some', 'unsure'),
      hose: fc.constantFrom('soft', 'hard', 'not-reached'),
    }) as fc.Arbitrary<ColdReading>;
    fc.assert(
      fc.property(any, (reading) => {
        if (safeToOpen(reading).verdict !== 'safe') return;
        expect(reading.tempC + reading.expandedUncertaintyC).toBeLessThanOrEqual(50 + 1e-6);
        expect(reading.pressure).toBe('none');
        expect(reading.hose).not.toBe('hard');
        expect(reading.method).not.toBe('engine-sensor');
      }),
      { numRuns: 2000 },
    );
  });
});
