import { type DataTable } from '../drawing.ts';
import { sizeText } from './size-text.ts';
import { BLEED_NAMES, MARK_WORDS, SEAL_NAMES, type FeatureMarks, type ThermostatFeatures } from './features.ts';

const sizeWords = (sizeMm: number | null): string => (sizeMm === null ? 'not known' : `${sizeText(sizeMm)} mm`);

/** The features of one thermostat in words, with what is pointed out. */
export function featureTable({
  name,
  features,
  marks = {},
}: {
  name: string;
  features: ThermostatFeatures;
  marks?: FeatureMarks;
}): DataTable {
  const { sealType, bleedDevice, hasBypassValve } = features;
  const said: readonly (readonly [string, keyof ThermostatFeatures, string])[] = [
    ['flange diameter', 'flangeDiameterMm', sizeWords(features.flangeDiameterMm)],
    ['valve diameter', 'valveDiameterMm', sizeWords(features.valveDiameterMm)],
    ['height', 'heightMm', sizeWords(features.heightMm)],
    ['seal', 'sealType', sealType === null ? 'not known' : SEAL_NAMES[sealType]],
    ['bleed device', 'bleedDevice', bleedDevice === null ? 'not known' : BLEED_NAMES[bleedDevice]],
    ['by-pass valve', 'hasBypassValve', hasBypassValve === null ? 'not known' : hasBypassValve ? 'yes' : 'no'],
  ];
  return {
    caption: `${name}, by its features`,
    head: ['feature', 'value', 'mark'],
    rows: said.map(([feature, key, value]) => {
      const mark = marks[key];
      return [feature, value, mark === undefined ? '' : MARK_WORDS[mark]];
    }),
  };
}
