import { describe, expect, it } from '@jest/globals';
import { gaugeObservation } from './gauge-observation.ts';

describe('a look at the dashboard gauge', () => {
  it.each([
    [{ reading: 'stays-cold', minutesDriven: 30, outsideC: 12 }, 'never-warms'],
    [{ reading: 'below-middle', minutesDriven: 25 }, 'never-warms'],
    [{ reading: 'stays-cold', minutesDriven: 8 }, 'nothing'],
    [{ reading: 'stays-cold', minutesDriven: 30, outsideC: -12 }, 'nothing'],
    [{ reading: 'middle', minutesDriven: 30 }, 'nothing'],
    [{ reading: 'hot', minutesDriven: 10 }, 'overheats'],
  ] as const)('%p supports %s', (observation, supports) => {
    const finding = gaugeObservation(observation);
    expect(finding.supports).toBe(supports);
    expect(finding).not.toHaveProperty('openingC');
  });

  it('stops the driver when it is hot', () => {
    expect(gaugeObservation({ reading: 'hot', minutesDriven: 10 }).cautions.join()).toMatch(/Stop the engine.*Never open the cap/);
  });
});
