import { formatVolume } from '#libs/units';
import { refuse, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { checkFillAccount } from './check-fill-account.ts';
import {
  type CardVolume,
  type FillAccount,
  type FillAccountInput,
  type FillStage,
  type FillStep,
  type FillTolerances,
  type MorningVerdict,
  type Poured,
  type ShortfallVerdict,
} from './fill-account.types.ts';

/** What a workshop starts with. Common practice, no source; settings. */
export const DEFAULT_FILL_TOLERANCES: FillTolerances = { shortfallL: 0.3, morningL: 0.2, aboutL: 0.25 };

const ARITHMETIC_L = 1e-9;

const litres = (volumeL: number): string => formatVolume(volumeL, { unit: 'L' });

type StagePour = readonly [FillStage, Poured];

function pouredStages(input: FillAccountInput): readonly StagePour[] {
  const stages: readonly (readonly [FillStage, Poured | undefined])[] = [
    ['first-fill', input.firstFill],
    ['after-short-run', input.afterShortRun],
    ['after-run-hot', input.afterRunHot],
    ['next-morning', input.nextMorning],
  ];
  return stages.flatMap(([stage, poured]) => (poured === undefined ? [] : [[stage, poured] as const]));
}

/** The shrink belongs to the first filling, where additive and water meet. */
function stepsOf(stages: readonly StagePour[], spaceL: number, shrinkL: number): readonly FillStep[] {
  let filledL = -shrinkL;
  return stages.map(([stage, poured]) => {
    filledL += poured.volumeL;
    return { stage, volumeL: poured.volumeL, isAbout: poured.isAbout === true, filledL, stillMissingL: spaceL - filledL };
  });
}

function widened(toleranceL: number, aboutL: number, figures: readonly (CardVolume | undefined)[]): number {
  return toleranceL + aboutL * figures.filter((figure) => figure?.isAbout === true).length;
}

function judgeShortfall(shortfallL: number, toleranceL: number): ShortfallVerdict {
  if (shortfallL > toleranceL + ARITHMETIC_L) return 'short';
  return shortfallL < -toleranceL - ARITHMETIC_L ? 'over' : 'within';
}

/** What the morning takes beyond its tolerance came out as air if the evening was short of it, else it went somewhere. */
function judgeMorning(
  morningL: number,
  morningToleranceL: number,
  evening: { verdict: ShortfallVerdict; shortfallL: number },
): MorningVerdict {
  if (morningL <= morningToleranceL + ARITHMETIC_L) return 'within';
  const isExplained = evening.verdict === 'short' && morningL <= evening.shortfallL + morningToleranceL + ARITHMETIC_L;
  return isExplained ? 'air-came-out' : 'look-for-leak';
}

function shortfallWarnings(verdict: ShortfallVerdict, shortfallL: number, toleranceL: number): readonly Warning[] {
  if (verdict === 'short') {
    const text = `${litres(shortfallL)} less went in than came out and was missing (tolerance ${litres(toleranceL)}): air may be trapped. Bleed again as the manual says before driving.`;
    return [{ code: 'air-may-be-trapped', text }];
  }
  if (verdict !== 'over') return [];
  const text = `${litres(-shortfallL)} more went in than there was space for (tolerance ${litres(toleranceL)}): more was missing on arrival than noted, or something leaks.`;
  return [{ code: 'more-than-space', text }];
}

function morningWarnings(verdict: MorningVerdict, morningL: number, toleranceL: number): readonly Warning[] {
  if (verdict === 'look-for-leak') {
    const text = `It took ${litres(morningL)} next morning (tolerance ${litres(toleranceL)}): look for a leak, and look at the level again after the next cold night.`;
    return [{ code: 'check-for-leak', text }];
  }
  if (verdict !== 'air-came-out') return [];
  const text = `It took ${litres(morningL)} next morning, what was short the evening before: air has come out. Look at the level again after the next cold night.`;
  return [{ code: 'air-may-be-trapped', text }];
}

function keptWarnings(keptLeftL: number): readonly Warning[] {
  if (keptLeftL <= ARITHMETIC_L) return [];
  return [
    {
      code: 'kept-left-over',
      text: `${litres(keptLeftL)} of the kept coolant did not go back in: book it as waste, or label it for this car.`,
    },
  ];
}

function total(stages: readonly StagePour[], part: 'volumeL' | 'productL' | 'keptL'): number {
  return stages.reduce((sum, [, poured]) => sum + (poured[part] ?? 0), 0);
}

/**
 * The account of a filling: what was missing and drained against what went in, stage by stage, and what the difference
 * means.
 *
 * Less in than out, beyond the tolerance: air may be trapped. More taken next morning than the tolerance: look for a
 * leak, unless it is what the evening was short of. Each figure marked 'about' widens the tolerance it bears on.
 *
 * @param input Figures from the card, L; what isn't known yet is left out
 * @returns Verdicts with the tolerances used, the steps for the picture, product used, kept and waste; refused where the
 *   figures contradict each other
 * @example fillAccount({ missingOnArrival: { volumeL: 1 }, drained: { volumeL: 3 }, firstFill: { volumeL: 3.2 } })
 * // shortfallL 0.8, shortfall 'short'
 */
export function fillAccount(input: FillAccountInput): Outcome<FillAccount> {
  const problem = checkFillAccount(input);
  if (problem) return refuse(problem);
  const { missingOnArrival, drained, nextMorning, shrinkL = 0 } = input;
  const tolerances = {
    shortfallL: input.tolerances?.shortfallL ?? DEFAULT_FILL_TOLERANCES.shortfallL,
    morningL: input.tolerances?.morningL ?? DEFAULT_FILL_TOLERANCES.morningL,
    aboutL: input.tolerances?.aboutL ?? DEFAULT_FILL_TOLERANCES.aboutL,
  };
  const spaceL = (missingOnArrival?.volumeL ?? 0) + (drained?.volumeL ?? 0);
  const stages = pouredStages(input);
  const evening = stages.filter(([stage]) => stage !== 'next-morning');
  const filledL = evening.length === 0 ? 0 : total(evening, 'volumeL') - shrinkL;
  const shortfallL = spaceL - filledL;
  const shortfallToleranceL = widened(tolerances.shortfallL, tolerances.aboutL, [
    missingOnArrival,
    drained,
    ...evening.map(([, poured]) => poured),
  ]);
  const morningToleranceL = widened(tolerances.morningL, tolerances.aboutL, [nextMorning]);
  const shortfall = input.firstFill === undefined ? 'not-yet' : judgeShortfall(shortfallL, shortfallToleranceL);
  const morningL = nextMorning?.volumeL ?? null;
  const morning = morningL === null ? 'not-yet' : judgeMorning(morningL, morningToleranceL, { verdict: shortfall, shortfallL });
  const keptL = drained?.keptL ?? 0;
  const keptUsedL = total(stages, 'keptL');
  return {
    ok: true,
    spaceL,
    filledL,
    shortfallL,
    shortfallToleranceL,
    shortfall,
    morningL,
    morningToleranceL,
    morning,
    steps: stepsOf(stages, spaceL, shrinkL),
    productUsedL: total(stages, 'productL'),
    keptL,
    keptUsedL,
    keptLeftL: Math.max(0, keptL - keptUsedL),
    wasteL: Math.max(0, (drained?.volumeL ?? 0) - keptL),
    tolerances,
    assumptions: [
      `Tolerances: ${litres(tolerances.shortfallL)} for the filling, ${litres(tolerances.morningL)} for the morning, ${litres(tolerances.aboutL)} wider for each 'about'.`,
      ...(shrinkL > 0 ? [`${litres(shrinkL)} of what went in is shrink on mixing and fills nothing.`] : []),
    ],
    warnings: [
      ...shortfallWarnings(shortfall, shortfallL, shortfallToleranceL),
      ...(morningL === null ? [] : morningWarnings(morning, morningL, morningToleranceL)),
      ...keptWarnings(keptL - keptUsedL),
    ],
    sources: [SOURCE.tolerances],
  };
}
