import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Grounds, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { type AdditiveInput } from '../strength/additive.ts';
import { strengthWarnings, type ProductLimits } from '../strength/strength-warnings.ts';
import { toAdditive } from '../strength/to-additive.ts';
import { DEFAULT_MARK_ML } from './default-mark.ts';
import { jugs, type Jug } from './jugs.ts';
import { mix } from './mix.ts';
import { mixtureResult } from './mixture-result.ts';
import { type MixtureResult } from './recipe.types.ts';
import { roundToMarks } from './round-to-marks.ts';

export interface JugPlanInput {
  readonly glycol: Glycol;
  readonly additive: AdditiveInput;
  readonly additiveL: number;
  readonly waterL: number;
  readonly jugL: number;
  /** 50 where left out. */
  readonly markMl?: number | undefined;
  readonly limits?: ProductLimits | undefined;
}

export interface JugPlan extends MixtureResult, Grounds {
  /** Exact; they sum to the amounts. */
  readonly jugs: readonly Jug[];
  readonly roundedJugs: MixtureResult & {
    readonly markMl: number;
    readonly jugs: readonly Jug[];
    readonly additiveL: number;
    readonly waterL: number;
  };
}

function check(input: JugPlanInput): ReturnType<typeof checkNumber> {
  const amount = { unit: 'L', least: 0, most: 500 };
  return (
    checkNumber(input.additiveL, { ...amount, field: 'additiveL', name: 'The additive' }) ??
    checkNumber(input.waterL, { ...amount, field: 'waterL', name: 'The water' }) ??
    checkNumber(input.jugL, { field: 'jugL', name: 'The size of the jug', unit: 'L', least: 0.1, most: 100 }) ??
    checkNumber(input.markMl ?? DEFAULT_MARK_ML, {
      field: 'markMl',
      name: "The distance of the jug's marks",
      unit: 'mL',
      least: 1,
      most: input.jugL * 1000,
    })
  );
}

/**
 * Amounts shared out over jugs, exact and in whole marks, with the strength that each truly gives by itself.
 *
 * @param input Amounts measured apart at 20 °C, the additive, size and marks of the jug
 * @returns Both sets of jugs with their strength; refused for sizes that can't be
 * @example jugPlan({ glycol: 'ethylene', additive: { massPercent: 93 }, additiveL: 3, waterL: 3, jugL: 2 }).jugs.length // 3
 */
export function jugPlan(input: JugPlanInput): Outcome<JugPlan> {
  const problem = check(input);
  if (problem) return refuse(problem);
  const { glycol, additiveL, waterL, jugL, markMl = DEFAULT_MARK_ML } = input;
  const found = toAdditive(glycol, input.additive);
  if (!found.ok) return found;
  const { additive } = found;
  const resultOf = (amounts: { additiveL: number; waterL: number }): ReturnType<typeof mixtureResult> => {
    const mixture = mix(glycol, { volumeL: 0, massFraction: 0 }, { additive, ...amounts });
    return mixtureResult(glycol, mixture.massFraction * 100, additive);
  };
  const rounded = roundToMarks({ additiveL, waterL }, { jugMl: jugL * 1000, markMl });
  const roundedAmounts = {
    additiveL: rounded.reduce((sum, jug) => sum + jug.additiveMl, 0) / 1000,
    waterL: rounded.reduce((sum, jug) => sum + jug.waterMl, 0) / 1000,
  };
  const { strength, result } = resultOf({ additiveL, waterL });
  return {
    ok: true,
    ...result,
    jugs: jugs({ additiveL, waterL }, jugL),
    roundedJugs: { markMl, jugs: rounded, ...roundedAmounts, ...resultOf(roundedAmounts).result },
    assumptions: [...found.assumptions, 'The strength is that of the jugs by themselves, before they meet what stays in the system.'],
    warnings: [...found.warnings, ...strengthWarnings(strength, { percent: result.resultProductPercent, limits: input.limits })],
    sources: [SOURCE.freezing, SOURCE.density, SOURCE.pureDensity],
  };
}
