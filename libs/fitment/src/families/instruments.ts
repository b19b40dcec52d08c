import { type FeatureInstrument, type InstrumentKey } from './part-family.types.ts';

/** Names of the instruments. */
export const instrumentNames: Readonly<Record<InstrumentKey, string>> = {
  eye: 'by eye',
  stamp: 'stamp or label',
  'steel-rule': 'steel rule',
  vernier: 'vernier calliper',
  'thread-gauge': 'thread gauge',
  'cap-tester': 'cap tester with gauge',
  ohmmeter: 'ohmmeter',
};

/** Expanded uncertainties (k = 2): common practice, no source. Enter the shop's own where a certificate says better. */
export const byEye: FeatureInstrument = { instrument: 'eye', expandedUncertainty: 0, minutes: 0.5 };
export const byStamp: FeatureInstrument = { instrument: 'stamp', expandedUncertainty: 0, minutes: 1 };
export const byRule: FeatureInstrument = { instrument: 'steel-rule', expandedUncertainty: 0.5, minutes: 0.5 };
export const byVernier: FeatureInstrument = { instrument: 'vernier', expandedUncertainty: 0.05, minutes: 1 };
export const byThreadGauge: FeatureInstrument = { instrument: 'thread-gauge', expandedUncertainty: 0, minutes: 2 };
export const byCapTester: FeatureInstrument = { instrument: 'cap-tester', expandedUncertainty: 5, minutes: 4 };
export const byOhmmeter: FeatureInstrument = { instrument: 'ohmmeter', expandedUncertainty: 0.05, minutes: 3 };

/** How often a category is taken for another (common practice, no source): plain to see, or easily confused. */
export const plainToSee = 0.01;
export const easilyConfused = 0.03;

/** Every bench job begins with a part that is out of the car. */
export const coldPart =
  'Measure only a part that is out of the car, cold, clean and dry. Coolant is toxic and tastes sweet: gloves on, wipe up drops.';
