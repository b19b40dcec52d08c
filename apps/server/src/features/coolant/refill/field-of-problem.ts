import type { Problem } from '#libs/coolant';

const FIELDS: Readonly<Record<string, string>> = {
  glycol: 'glycol',
  systemVolumeL: 'holds',
  drainedVolumeL: 'out',
  jugL: 'jug',
  markMl: 'mark',
  altitudeM: 'altitude',
  capGaugeKPa: 'cap',
  capMeasuredKPa: 'capHeld',
  hottestExpectedC: 'hottest',
  'target.coldestAirC': 'coldest',
  'target.marginK': 'margin',
  'target.freezingPointC': 'aimFreezes',
  'target.productPercent': 'aimProduct',
  'target.volumePercent': 'aimGlycol',
  'residual.volumePercent': 'staysPercent',
  'additive.label.partsProduct': 'parts',
  'additive.label.partsWater': 'water',
  'additive.label.freezingPointC': 'labelFreezes',
  'additive.volumePercent': 'content',
  'additive.massPercent': 'content',
};

/** The field of the form that a refusal of the library points at. */
export function fieldOfProblem({ field = '' }: Problem): string {
  const known = FIELDS[field];
  if (known !== undefined) return known;
  if (field.startsWith('residual')) return 'stays';
  if (field.startsWith('target')) return 'aim';
  return 'product';
}
