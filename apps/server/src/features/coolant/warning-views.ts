import type { Warning, WarningCode } from '#libs/coolant';
import type { UnitPreference } from '#libs/units';
import { inUnits } from './units/in-units.ts';

/** Something to know before acting on an answer, as the partial `notice` draws it. */
export interface WarningView {
  readonly kind: 'note' | 'caution';
  readonly text: string;
}

/** Going on regardless of these can cost an engine. */
const LOOK_NOW = new Set<WarningCode>([
  'air-may-be-trapped',
  'below-corrosion-limit',
  'check-for-leak',
  'margin-small',
  'mixing-technologies',
  'more-than-space',
  'no-protection',
  'rounded-too-weak',
  'service-due',
  'tank-too-small',
  'wrong-scale',
]);

/** Warnings in a person's units, those to act on first. */
export function warningViews(warnings: readonly Warning[], units: UnitPreference): readonly WarningView[] {
  const views = warnings.map(({ code, text }): WarningView => ({
    kind: LOOK_NOW.has(code) ? 'caution' : 'note',
    text: inUnits(text, units),
  }));
  return [...views.filter(({ kind }) => kind === 'caution'), ...views.filter(({ kind }) => kind === 'note')];
}
