import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Sample } from '#libs/warm-up';
import { packSamples, unpackSamples } from './pack-samples.ts';

const figure = fc.double({ noNaN: true, noDefaultInfinity: true });
const sample = fc.record(
  {
    timeS: figure,
    coolantC: figure,
    speedKmh: figure,
    rpm: figure,
    loadPercent: figure,
    intakeC: figure,
    ambientC: figure,
    airFlowGps: figure,
  },
  { requiredKeys: ['timeS', 'coolantC'] },
);

describe('samples that are kept', () => {
  it('come back as they were, to the last bit', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(sample, { maxLength: 40 }), async (samples) => {
        expect(await unpackSamples(await packSamples(samples))).toEqual(samples);
      }),
      { numRuns: 60 },
    );
  });

  it('of an hour at ten a second take little room', async () => {
    const samples: Sample[] = Array.from({ length: 36_000 }, (_, index) => ({
      timeS: index / 10,
      coolantC: Math.round(Math.min(88, 15 + index / 200)),
      speedKmh: index % 600 < 200 ? 0 : 50,
      rpm: 800 + (index % 37) * 13,
    }));
    expect((await packSamples(samples)).length).toBeLessThan(400_000);
  });
});
