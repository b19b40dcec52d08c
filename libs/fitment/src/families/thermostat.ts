import { byEye, byRule, byStamp, byVernier, coldPart, easilyConfused, plainToSee } from './instruments.ts';
import { type PartFamily } from './part-family.types.ts';

/**
 * Plain wax thermostats. Opening tolerance ±2 °C: printed in several service manuals (read). Flanges of 44 to 67 mm are usual
 * (from memory); the plausible range is wider. Other tolerances and times: common practice, no source.
 */
export const thermostat: PartFamily = {
  id: 'thermostat',
  name: 'thermostat',
  cautions: [coldPart, 'The spring is strong: never prise the frame open.'],
  features: [
    {
      key: 'seal',
      name: 'seal',
      kind: 'category',
      criticality: 'sealing',
      misreadingRate: plainToSee,
      values: [
        { key: 'o-ring', name: 'O-ring' },
        { key: 'flat-gasket', name: 'flat gasket' },
        { key: 'moulded-rim', name: 'moulded rim' },
      ],
      instruments: [byEye],
      howToMeasure: 'Look at what seals the flange: a loose ring in a groove, a flat gasket, or rubber moulded round the rim.',
      howToMeasureRecess: 'A groove in the housing means an O-ring; a plain flat face, a gasket; a stepped recess, a moulded rim.',
    },
    {
      key: 'flangeDiameterMm',
      name: 'flange diameter',
      kind: 'number',
      unit: 'mm',
      criticality: 'sealing',
      tolerance: 0.3,
      plausible: { low: 30, high: 100 },
      instruments: [byVernier, byRule],
      howToMeasure: 'Take off the seal. Across the metal flange, twice at right angles; enter the mean. A bent flange: measure the recess.',
      howToMeasureRecess: 'Clean the recess to bare metal. Inside jaws across the step the flange sits in, twice at right angles.',
    },
    {
      key: 'overallHeightMm',
      name: 'overall height',
      kind: 'number',
      unit: 'mm',
      criticality: 'function',
      tolerance: 1,
      plausible: { low: 15, high: 150 },
      instruments: [byVernier, byRule],
      howToMeasure: 'Closed and cold, from the tip of the frame to the end of the wax side or its by-pass valve.',
    },
    {
      key: 'valveDiameterMm',
      name: 'valve diameter',
      kind: 'number',
      unit: 'mm',
      criticality: 'function',
      tolerance: 0.5,
      plausible: { low: 10, high: 70 },
      instruments: [byVernier, byRule],
      howToMeasure: 'Across the valve plate, seen from the radiator side.',
    },
    {
      key: 'openingTemperatureC',
      name: 'opening temperature',
      kind: 'number',
      unit: '°C',
      criticality: 'function',
      tolerance: 2,
      plausible: { low: 60, high: 115 },
      instruments: [byStamp],
      howToMeasure:
        'Read the stamp on the flange, the frame or the wax element. A bench test of the old part shows its fault, never its nominal figure.',
    },
    {
      key: 'bleedDevice',
      name: 'bleed device',
      kind: 'category',
      criticality: 'function',
      misreadingRate: easilyConfused,
      values: [
        { key: 'none', name: 'none' },
        { key: 'hole', name: 'plain hole' },
        { key: 'jiggle-pin', name: 'jiggle pin' },
        { key: 'ball', name: 'ball valve' },
      ],
      instruments: [byEye],
      howToMeasure: 'Hold the flange against the light: a free hole, or a hole with a loose pin or ball in it that rattles.',
    },
    {
      key: 'bypassValve',
      name: 'by-pass valve',
      kind: 'category',
      criticality: 'function',
      misreadingRate: plainToSee,
      values: [
        { key: 'none', name: 'none' },
        { key: 'rigid', name: 'rigid plate' },
        { key: 'sprung', name: 'sprung plate' },
      ],
      instruments: [byEye],
      howToMeasure: 'Look at the wax side: no plate, a fixed plate, or a plate on its own spring that closes the by-pass when hot.',
    },
    {
      key: 'housing',
      name: 'housing',
      kind: 'category',
      criticality: 'function',
      misreadingRate: plainToSee,
      values: [
        { key: 'separate', name: 'loose thermostat' },
        { key: 'integrated', name: 'one piece with its housing' },
      ],
      instruments: [byEye],
      howToMeasure: 'Does the thermostat come out of its cover, or is it one piece with it?',
    },
  ],
};
