import { formatVolume } from '#libs/units';

/** One thing to pour, in its turn. */
export interface PouringStep {
  readonly what: 'additive' | 'water' | 'mixed-jugs';
  readonly volumeL: number;
  readonly text: string;
}

/**
 * What to pour in which order. An empty system gets the two mixed in jugs; onto an old filling goes the additive first,
 * so that if less fits than reckoned it is water that stays out, never protection. Common practice, no source.
 *
 * @param amounts Additive and water, L, measured apart
 * @param isEmptySystem Nothing of the old filling stays in
 * @example pouringOrder({ additiveL: 2, waterL: 1 }, false).map((step) => step.what) // ['additive', 'water']
 */
export function pouringOrder(
  amounts: { readonly additiveL: number; readonly waterL: number },
  isEmptySystem: boolean,
): readonly PouringStep[] {
  const { additiveL, waterL } = amounts;
  const inLitres = (volumeL: number): string => formatVolume(volumeL, { unit: 'L' });
  if (isEmptySystem && additiveL > 0 && waterL > 0) {
    const text = `Mix ${inLitres(additiveL)} of additive with ${inLitres(waterL)} of demineralised water in jugs, then fill slowly.`;
    return [{ what: 'mixed-jugs', volumeL: additiveL + waterL, text }];
  }
  const steps: PouringStep[] = [];
  if (additiveL > 0) steps.push({ what: 'additive', volumeL: additiveL, text: `Pour in ${inLitres(additiveL)} of additive.` });
  if (waterL > 0) {
    const then = steps.length > 0 ? 'Then' : 'Pour in';
    steps.push({ what: 'water', volumeL: waterL, text: `${then} ${inLitres(waterL)} of demineralised water.` });
  }
  return steps;
}
