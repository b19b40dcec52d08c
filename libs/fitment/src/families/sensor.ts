import { byEye, byOhmmeter, byRule, byStamp, byThreadGauge, byVernier, coldPart, plainToSee } from './instruments.ts';
import { type PartFamily } from './part-family.types.ts';

/** Coolant temperature sensors. Tolerances, ranges and times: common practice, no source. */
export const sensor: PartFamily = {
  id: 'sensor',
  name: 'temperature sensor',
  cautions: [coldPart, 'Ignition off before the plug is pulled.'],
  features: [
    {
      key: 'seat',
      name: 'seat',
      kind: 'category',
      criticality: 'sealing',
      misreadingRate: plainToSee,
      values: [
        { key: 'washer', name: 'thread with washer' },
        { key: 'taper', name: 'tapered thread' },
        { key: 'o-ring-clip', name: 'O-ring and clip' },
      ],
      instruments: [byEye],
      howToMeasure: 'A parallel thread with a washer, a tapered thread without one, or a smooth body with a ring and a clip.',
    },
    {
      key: 'thread',
      name: 'thread',
      kind: 'category',
      criticality: 'sealing',
      misreadingRate: plainToSee,
      values: [
        { key: 'none', name: 'none' },
        { key: 'm10x1', name: 'M10 × 1' },
        { key: 'm12x1.5', name: 'M12 × 1.5' },
        { key: 'm14x1.5', name: 'M14 × 1.5' },
        { key: 'other', name: 'another' },
      ],
      instruments: [byThreadGauge, byStamp],
      howToMeasure: 'Gauge on the thread, calliper across it. A gauge that rocks is the wrong one.',
    },
    {
      key: 'bodyDiameterMm',
      name: 'body diameter at the seal',
      kind: 'number',
      unit: 'mm',
      criticality: 'sealing',
      tolerance: 0.2,
      plausible: { low: 5, high: 40 },
      instruments: [byVernier, byRule],
      howToMeasure: 'Across the part that seals, without the ring.',
    },
    {
      key: 'pins',
      name: 'pins',
      kind: 'number',
      unit: 'count',
      criticality: 'function',
      tolerance: 0,
      plausible: { low: 1, high: 6 },
      instruments: [byEye],
      howToMeasure: 'Count the contacts in the plug.',
    },
    {
      key: 'resistanceAt20CKOhm',
      name: 'resistance at 20 °C',
      kind: 'number',
      unit: 'kΩ',
      criticality: 'function',
      tolerance: 0.2,
      plausible: { low: 0.05, high: 100 },
      instruments: [byOhmmeter],
      howToMeasure:
        'Half an hour at room temperature, then across the pins. The old sensor may be the fault: a doubtful value excludes nothing.',
    },
  ],
};
