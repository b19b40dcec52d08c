import { type Criticality } from '../comparison/comparison.types.ts';

/** Units of number features. */
export type FeatureUnit = 'mm' | '°C' | 'kPa' | 'kΩ' | 'count';

/** Something to read a feature with. */
export type InstrumentKey = 'eye' | 'stamp' | 'steel-rule' | 'vernier' | 'thread-gauge' | 'cap-tester' | 'ohmmeter';

/** How one feature is read with one instrument. */
export interface FeatureInstrument {
  readonly instrument: InstrumentKey;
  /** U with k = 2, in the feature's unit; 0 for what is read exactly. */
  readonly expandedUncertainty: number;
  readonly minutes: number;
}

interface FeatureBase {
  readonly key: string;
  /** As it is called at the bench. */
  readonly name: string;
  readonly criticality: Criticality;
  /** Best first. */
  readonly instruments: readonly FeatureInstrument[];
  /** What to do, on the removed part; and in the engine's recess where that can be read too. */
  readonly howToMeasure: string;
  readonly howToMeasureRecess?: string;
}

export interface CategoryFeature extends FeatureBase {
  readonly kind: 'category';
  readonly values: readonly { readonly key: string; readonly name: string }[];
  readonly misreadingRate: number;
}

export interface NumberFeature extends FeatureBase {
  readonly kind: 'number';
  readonly unit: FeatureUnit;
  readonly tolerance: number;
  /** Outside it no such part exists: a reading there is a slip. */
  readonly plausible: { readonly low: number; readonly high: number };
}

export type FamilyFeature = CategoryFeature | NumberFeature;

/** A kind of part whose variants are told apart by the same features. The first content of data that the owner edits. */
export interface PartFamily {
  readonly id: string;
  /** Singular, lower case. */
  readonly name: string;
  readonly features: readonly FamilyFeature[];
  /** What can hurt while it is measured. */
  readonly cautions: readonly string[];
}
