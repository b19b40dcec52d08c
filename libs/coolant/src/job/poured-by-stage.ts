import { type FillAccountInput, type FillStage, type Poured } from './fill-account.types.ts';

/** One entry of the card: what somebody poured at a stage. */
export interface PouredEntry {
  readonly stage: FillStage;
  readonly productMl: number;
  readonly waterMl: number;
  readonly keptMl: number;
  readonly about: boolean;
}

const ML_PER_L = 1000;

function at(stage: FillStage, entries: readonly PouredEntry[]): Poured | undefined {
  const own = entries.filter((entry) => entry.stage === stage);
  if (own.length === 0) return undefined;
  const litres = (amount: (entry: PouredEntry) => number): number => own.reduce((sum, entry) => sum + amount(entry), 0) / ML_PER_L;
  return {
    volumeL: litres(({ productMl, waterMl, keptMl }) => productMl + waterMl + keptMl),
    productL: litres(({ productMl }) => productMl),
    keptL: litres(({ keptMl }) => keptMl),
    isAbout: own.some(({ about }) => about),
  };
}

/**
 * The card's pours added up by stage, as the fill account takes them.
 *
 * @param entries In any order, mL
 * @returns Litres by stage; undefined where nothing was poured. One 'about' makes its stage an 'about'.
 * @example pouredByStage([{ stage: 'first-fill', productMl: 900, waterMl: 1100, keptMl: 0, about: false }]).firstFill // { volumeL: 2, productL: 0.9, … }
 */
export function pouredByStage(
  entries: readonly PouredEntry[],
): Pick<FillAccountInput, 'firstFill' | 'afterShortRun' | 'afterRunHot' | 'nextMorning'> {
  return {
    firstFill: at('first-fill', entries),
    afterShortRun: at('after-short-run', entries),
    afterRunHot: at('after-run-hot', entries),
    nextMorning: at('next-morning', entries),
  };
}
