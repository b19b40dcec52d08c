import { ChartInputError } from '../chart-input-error.ts';
import { type Verdict } from '../drawing.ts';

/** How a thermostat seals in its recess. */
export type SealType = 'o-ring' | 'flat-gasket' | 'moulded-rim';

/** How trapped air gets past the shut thermostat. */
export type BleedDevice = 'none' | 'plain-hole' | 'jiggle-pin';

/** What is known of one thermostat; null is not known and drawn broken with a question mark. */
export interface ThermostatFeatures {
  readonly flangeDiameterMm: number | null;
  readonly valveDiameterMm: number | null;
  readonly heightMm: number | null;
  readonly sealType: SealType | null;
  readonly bleedDevice: BleedDevice | null;
  readonly hasBypassValve: boolean | null;
}

/** Why a feature is pointed out: its verdict, or that it is the one to read next. */
export type FeatureMark = Verdict | 'next';

/** The features to point out. */
export type FeatureMarks = Readonly<Partial<Record<keyof ThermostatFeatures, FeatureMark>>>;

/** What a pointed-out feature says in words. */
export const MARK_WORDS: Readonly<Record<FeatureMark, string>> = {
  fits: 'fits',
  'does-not': 'does not fit',
  unsure: 'unsure',
  'not-read': 'not read',
  next: 'read next',
};

export const SEAL_NAMES: Readonly<Record<SealType, string>> = {
  'o-ring': 'O-ring',
  'flat-gasket': 'flat gasket',
  'moulded-rim': 'moulded rim',
};

export const BLEED_NAMES: Readonly<Record<BleedDevice, string>> = {
  none: 'none',
  'plain-hole': 'plain hole',
  'jiggle-pin': 'jiggle pin',
};

/** Below and beyond this nothing of the kind exists; a slip of the decimal point does. */
const LEAST_MM = 1;
const MOST_MM = 500;

/**
 * Refuses dimensions that no thermostat has.
 *
 * @throws ChartInputError naming the dimension.
 */
export function checkFeatures(features: ThermostatFeatures, field: string): void {
  for (const key of ['flangeDiameterMm', 'valveDiameterMm', 'heightMm'] as const) {
    const size = features[key];
    if (size === null || (size >= LEAST_MM && size <= MOST_MM)) continue;
    throw new ChartInputError(
      'out-of-range',
      `${field}.${key}`,
      `${key} is ${size} mm: enter ${LEAST_MM} to ${MOST_MM} mm, or leave it not known.`,
    );
  }
}
