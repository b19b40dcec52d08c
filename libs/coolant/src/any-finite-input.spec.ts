import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  boiling,
  coldForLevel,
  coldStart,
  compareStrength,
  coolantProperties,
  coolDownTemperature,
  coolDownTime,
  expansion,
  fillAccount,
  flush,
  heatCarrying,
  hydrometer,
  impliedSystem,
  jugPlan,
  learnTimeConstant,
  pouredStrength,
  protection,
  recipe,
  recipeAfterFlush,
  refillSpace,
  refractometer,
  replacement,
  safeToOpen,
  serviceLife,
  waterQuality,
  type Glycol,
} from './index.ts';
import { evenly, STEPS } from './spec-support/evenly.ts';

/** Any double at all, mixed with figures that calculations get through with. */
function around(min: number, max: number): fc.Arbitrary<number> {
  const anything = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(0, -0, 1e-300, 5e-324, 1e308, 60, 57.8, min, max),
  );
  return fc.oneof({ weight: 9, arbitrary: fc.integer(STEPS).map(evenly(min, max)) }, { weight: 1, arbitrary: anything });
}
const optional = (number: fc.Arbitrary<number>): fc.Arbitrary<number | undefined> => fc.option(number, { nil: undefined });

const anyNumber = around(-60, 120);
const litres = around(0, 8);
const percent = around(0, 60);
const frost = around(-48, 0);
const maybe = optional(anyNumber);
const anyGlycol = fc.constantFrom<Glycol>('ethylene', 'propylene');
const anyStrength = fc.oneof(
  fc.record({ volumePercent: percent }),
  fc.record({ massPercent: percent }),
  fc.record({ freezingPointC: frost }),
);
const anyAdditive = fc.oneof(
  fc.record({ volumePercent: around(20, 100) }),
  fc.record({ massPercent: around(20, 100) }),
  fc.record({ label: fc.record({ partsProduct: around(0.5, 2), partsWater: around(0.5, 3), freezingPointC: frost }) }),
  fc.constant({ isContentUnknown: true }),
);
const anyTarget = fc.oneof(
  anyStrength,
  fc.record({ productPercent: percent }),
  fc.record({ coldestAirC: frost, marginK: optional(around(0, 10)) }),
);
const anyPour = fc.option(
  fc.record({ volumeL: litres, productL: optional(around(0, 1)), keptL: optional(around(0, 1)), isAbout: fc.boolean() }),
  { nil: undefined },
);

/** Every number anywhere in a result is finite; null means "not to be had" and is said as such. */
function expectFinite(value: unknown, path: string): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${path} is ${value}`);
    return;
  }
  if (typeof value === 'string') {
    if (/NaN|Infinity|undefined/.test(value)) throw new Error(`${path} says ${value}`);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) expectFinite(inner, `${path}.${key}`);
}

function holds<Input>(name: string, input: fc.Arbitrary<Input>, calculate: (input: Input) => { readonly ok: boolean }): void {
  it(name, () => {
    let answered = 0;
    fc.assert(
      fc.property(input, (given) => {
        const found = calculate(given);
        if (found.ok) answered += 1;
        expectFinite(found, name);
      }),
      { numRuns: 400 },
    );
    expect(answered).toBeGreaterThan(10);
  });
}

describe('any finite input gives finite figures or a refusal in words', () => {
  const strength = fc.tuple(anyGlycol, anyStrength).map(([glycol, given]) => ({ glycol, ...given }));
  const filling = {
    glycol: anyGlycol,
    systemVolumeL: around(0.1, 12),
    additive: anyAdditive,
    target: anyTarget,
    jugL: optional(around(0.5, 5)),
    markMl: optional(around(5, 200)),
  };
  holds('protection', strength, protection);
  holds(
    'recipe',
    fc.record({ ...filling, drainedVolumeL: optional(litres), residual: fc.option(anyStrength, { nil: undefined }) }),
    recipe,
  );
  holds(
    'recipe after a flush',
    fc.record({
      ...filling,
      drainedVolumeL: fc.integer(STEPS).map(evenly(0, 10)),
      cycles: fc.oneof(fc.integer({ min: 0, max: 101 }), anyNumber),
      present: fc.option(anyStrength, { nil: undefined }),
    }),
    recipeAfterFlush,
  );
  holds(
    'jugs',
    fc.record({
      glycol: anyGlycol,
      additive: anyAdditive,
      additiveL: litres,
      waterL: litres,
      jugL: around(0.5, 5),
      markMl: optional(around(5, 200)),
    }),
    jugPlan,
  );
  holds('space', fc.record({ systemVolumeL: around(0.1, 12), missingOnArrivalL: litres, drainedL: litres }), refillSpace);
  holds(
    'replacement',
    fc.record({ systemVolume: litres, presentPercent: around(0, 40), addedPercent: around(60, 100), targetPercent: around(40, 60) }),
    replacement,
  );
  holds(
    'flush',
    fc.oneof(
      fc.record({ systemVolumeL: around(0.1, 12), drainedVolumeL: litres, cycles: fc.integer({ min: -1, max: 101 }) }),
      fc.record({ systemVolumeL: around(0.1, 12), drainedVolumeL: litres, maxRemainingFraction: around(0.001, 1) }),
    ),
    flush,
  );
  holds(
    'boiling',
    fc
      .tuple(
        strength,
        fc.record({
          altitudeM: optional(around(-2000, 11000)),
          capGaugeKPa: optional(around(0, 300)),
          capMeasuredKPa: optional(around(0, 300)),
          hottestExpectedC: maybe,
        }),
      )
      .map(([given, rest]) => ({ ...given, ...rest })),
    boiling,
  );
  holds(
    'expansion',
    fc
      .tuple(strength, fc.record({ volumeL: litres, fromC: anyNumber, toC: anyNumber, tankSpaceL: optional(litres) }))
      .map(([given, rest]) => ({ ...given, ...rest })),
    expansion,
  );
  holds(
    'properties',
    fc.tuple(strength, anyNumber).map(([given, tempC]) => ({ ...given, tempC })),
    coolantProperties,
  );
  holds(
    'heat carrying',
    fc.tuple(strength, maybe).map(([given, tempC]) => ({ ...given, tempC })),
    heatCarrying,
  );
  const anyReading = fc.oneof(
    fc.record({ refractiveIndex: around(1.33, 1.41) }),
    fc.record({ brix: around(0, 84) }),
    fc.record({ freezingPointC: frost }),
  );
  holds(
    'refractometer',
    fc
      .tuple(anyGlycol, fc.option(anyGlycol, { nil: undefined }), anyReading, maybe)
      .map(([glycol, scaleGlycol, reading, sampleC]) => ({ glycol, scaleGlycol, sampleC, ...reading })),
    refractometer,
  );
  holds(
    'hydrometer',
    fc.record({
      glycol: anyGlycol,
      specificGravity: around(0.98, 1.1),
      sampleC: optional(around(0, 60)),
      referenceC: optional(around(0, 60)),
      gravityUncertainty: optional(around(0, 0.01)),
    }),
    hydrometer,
  );
  holds(
    'fill account',
    fc.record({
      systemVolumeL: optional(around(5, 20)),
      missingOnArrival: anyPour,
      drained: anyPour,
      firstFill: anyPour,
      nextMorning: anyPour,
      shrinkL: optional(around(0, 0.2)),
    }),
    fillAccount,
  );
  holds(
    'computed beside measured',
    fc.record({ glycol: anyGlycol, computed: anyStrength, measured: anyStrength, toleranceVolumePercent: optional(around(0, 10)) }),
    compareStrength,
  );
  holds(
    'what the reading says',
    fc.record({
      glycol: anyGlycol,
      systemVolumeL: around(0.1, 12),
      spaceL: litres,
      residual: anyStrength,
      additive: anyAdditive,
      additiveL: litres,
      waterL: litres,
      measured: anyStrength,
    }),
    impliedSystem,
  );
  holds(
    'strength of what was poured',
    fc.record({
      glycol: anyGlycol,
      residualL: litres,
      residual: anyStrength,
      additive: anyAdditive,
      additiveL: litres,
      waterL: litres,
    }),
    pouredStrength,
  );
  const standing = fc.record({ startC: anyNumber, airC: anyNumber, timeConstantMin: optional(around(1, 400)) });
  holds('cool-down temperature', fc.tuple(standing, anyNumber), ([input, elapsedMin]) => coolDownTemperature(input, elapsedMin));
  holds('cool-down time', fc.tuple(standing, anyNumber), ([input, limitC]) => coolDownTime(input, limitC));
  holds(
    'time constant',
    fc.array(fc.record({ startC: around(60, 110), endC: around(20, 60), airC: around(-10, 20), elapsedMin: around(0, 600) }), {
      minLength: 1,
      maxLength: 2,
    }),
    learnTimeConstant,
  );
  holds(
    'safe to open',
    fc.record({
      reading: fc.option(
        fc.record({ tempC: anyNumber, expandedUncertaintyK: around(0, 10), instrument: fc.constant('contact' as const) }),
        {
          nil: undefined,
        },
      ),
      pressure: fc.constant('none' as const),
    }),
    safeToOpen,
  );
  holds('cold for level', fc.tuple(anyNumber, anyNumber), ([coolantC, airC]) => coldForLevel(coolantC, airC));
  holds('cold start', fc.tuple(anyNumber, anyNumber), ([coolantC, intakeC]) => coldStart(coolantC, intakeC));
  holds(
    'service life',
    fc.record({
      technology: fc.constant('organic' as const),
      filledOn: fc.constant('2026-03-31'),
      filledAtKm: optional(around(0, 4e5)),
      statedMonths: optional(around(1, 100)),
      statedKm: optional(around(1, 2e5)),
      odometerKm: optional(around(0, 4e5)),
    }),
    serviceLife,
  );
  const mgL = optional(around(0, 400));
  holds(
    'water',
    fc.record({ chlorideMgL: mgL, sulfateMgL: mgL, hardnessMgL: mgL, dissolvedSolidsMgL: mgL, pH: optional(around(0, 14)) }),
    waterQuality,
  );
});
