import { type ComparisonFeature } from '../comparison/comparison.types.ts';
import { type FamilyFeature, type FeatureInstrument, type InstrumentKey, type PartFamily } from './part-family.types.ts';

/** The features of a family as a comparison takes them. */
export interface FamilyComparison {
  readonly features: readonly ComparisonFeature[];
  /** Features that no instrument in the shop can read: give a reading of null for each, so that none is asked for. */
  readonly unreadable: readonly string[];
}

/**
 * The features of a part family for `comparison`: for each the best instrument in the shop, its standard uncertainty U/2 and
 * its minutes, and the plausible range or list of values.
 *
 * @param family - the part family
 * @param instruments - what the shop has; the eye and the stamp are always there
 * @example comparisonFeatures(thermostat, ['vernier']).features.find(({ key }) => key === 'flangeDiameterMm')
 * // { …, tolerance: 0.3, low: 30, high: 100, minutes: 1, standardUncertainty: 0.025 }
 */
export function comparisonFeatures(family: PartFamily, instruments: readonly InstrumentKey[]): FamilyComparison {
  const inShop: readonly InstrumentKey[] = ['eye', 'stamp', ...instruments];
  const chosen = family.features.map((feature) => ({ feature, best: bestInstrument(feature, inShop) }));
  return {
    features: chosen.map(({ feature, best }) => comparisonFeature(feature, best)),
    unreadable: chosen.filter(({ best }) => best === undefined).map(({ feature }) => feature.key),
  };
}

function bestInstrument(feature: FamilyFeature, inShop: readonly InstrumentKey[]): FeatureInstrument | undefined {
  const usable = feature.instruments.filter(({ instrument }) => inShop.includes(instrument));
  return usable.reduce<FeatureInstrument | undefined>(
    (best, each) => (best === undefined || each.expandedUncertainty < best.expandedUncertainty ? each : best),
    undefined,
  );
}

function comparisonFeature(feature: FamilyFeature, best: FeatureInstrument | undefined): ComparisonFeature {
  const { key, criticality } = feature;
  const minutes = best?.minutes;
  if (feature.kind === 'category') {
    return {
      key,
      kind: 'category',
      criticality,
      minutes,
      misreadingRate: feature.misreadingRate,
      values: feature.values.map((each) => each.key),
    };
  }
  const { tolerance, plausible } = feature;
  const standardUncertainty = best === undefined ? undefined : best.expandedUncertainty / 2;
  return { key, kind: 'number', criticality, minutes, tolerance, low: plausible.low, high: plausible.high, standardUncertainty };
}
