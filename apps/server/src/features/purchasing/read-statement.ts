import { checkReading, type FamilyFeature, type PartFamily } from '#libs/fitment';

export type ReadStatement = { ok: true; figure: number | null; words: string | null } | { ok: false; message: string };

/**
 * What was typed for a feature, as its figure or its kind, checked against what such a part can have at all.
 *
 * @example readStatement(thermostat, flangeDiameter, '54,0') // { ok: true, figure: 54, words: null }
 */
export function readStatement(family: PartFamily, feature: FamilyFeature, typed: string): ReadStatement {
  const isFigure = feature.kind === 'number';
  const text = typed.replace(',', '.');
  const value = isFigure && /^[+-]?\d{1,7}(\.\d{1,3})?$/.test(text) ? Number(text) : typed;
  const check = checkReading(family.name, feature, { value });
  if (!check.ok) return check;
  return typeof value === 'number' ? { ok: true, figure: value, words: null } : { ok: true, figure: null, words: value };
}
