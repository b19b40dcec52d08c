import type { TargetInput } from '#libs/coolant';
import type { ReadForm } from '../form/bench-field.ts';
import type { Asked } from './asked.ts';

const given = (field: string, value: number | undefined, target: (value: number) => TargetInput): Asked<TargetInput> =>
  value === undefined ? { ok: false, field } : { ok: true, value: target(value) };

/** What the mixture is aimed at. */
export function targetOf({ figures, choices }: ReadForm): Asked<TargetInput> {
  const { coldest, margin, aimFreezes, aimProduct, aimGlycol } = figures;
  switch (choices['aim'] ?? '') {
    case 'freezing':
      return given('aimFreezes', aimFreezes, (freezingPointC) => ({ freezingPointC }));
    case 'product':
      return given('aimProduct', aimProduct, (productPercent) => ({ productPercent }));
    case 'glycol':
      return given('aimGlycol', aimGlycol, (volumePercent) => ({ volumePercent }));
    default:
      return given('coldest', coldest, (coldestAirC) => ({ coldestAirC, marginK: margin }));
  }
}
