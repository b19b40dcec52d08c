import { byCapTester, byEye, byStamp, byVernier, plainToSee } from './instruments.ts';
import { type PartFamily } from './part-family.types.ts';

/** Pressure caps of radiators and expansion tanks. Tolerances, ranges and times: common practice, no source. */
export const cap: PartFamily = {
  id: 'cap',
  name: 'cap',
  cautions: ['Never take a cap off a hot system or one under pressure: scalding. Cold first, hose soft, then a quarter turn and wait.'],
  features: [
    {
      key: 'fastening',
      name: 'fastening',
      kind: 'category',
      criticality: 'sealing',
      misreadingRate: plainToSee,
      values: [
        { key: 'bayonet', name: 'bayonet' },
        { key: 'screw', name: 'screw thread' },
      ],
      instruments: [byEye],
      howToMeasure: 'Two lugs that lock in half a turn, or a thread.',
    },
    {
      key: 'sealDiameterMm',
      name: 'seal diameter',
      kind: 'number',
      unit: 'mm',
      criticality: 'sealing',
      tolerance: 0.3,
      plausible: { low: 15, high: 90 },
      instruments: [byVernier],
      howToMeasure: 'Across the outer edge of the lower seal.',
    },
    {
      key: 'openingPressureKPa',
      name: 'opening pressure',
      kind: 'number',
      unit: 'kPa',
      criticality: 'function',
      tolerance: 10,
      plausible: { low: 20, high: 250 },
      instruments: [byStamp, byCapTester],
      howToMeasure:
        'Read the figure on the cap: 1.1, 110 and 16 can be bar, kPa and psi; enter kPa. A tester shows what the old cap does now, not what it should.',
    },
    {
      key: 'vacuumValve',
      name: 'vacuum valve',
      kind: 'category',
      criticality: 'function',
      misreadingRate: plainToSee,
      values: [
        { key: 'present', name: 'present' },
        { key: 'none', name: 'none' },
      ],
      instruments: [byEye],
      howToMeasure: 'A small sprung disc in the middle of the lower seal.',
    },
  ],
};
