import { type Grounds } from '../outcome.ts';

/** A volume as written on the job card; `isAbout` where it was judged by eye. */
export interface CardVolume {
  readonly volumeL: number;
  readonly isAbout?: boolean | undefined;
}

/** What came out: part of it may be kept clean for this car, the rest is waste. */
export interface Drained extends CardVolume {
  readonly keptL?: number | undefined;
}

/** What went in at one stage: new product, kept coolant of this car, and for the rest water. */
export interface Poured extends CardVolume {
  readonly productL?: number | undefined;
  readonly keptL?: number | undefined;
}

export type FillStage = 'first-fill' | 'after-short-run' | 'after-run-hot' | 'next-morning';

/** Settings of the workshop, L. */
export interface FillTolerances {
  /** So much less than the space may go in before air is suspected. */
  readonly shortfallL: number;
  /** So much may be taken next morning before a leak is suspected. */
  readonly morningL: number;
  /** Each figure marked 'about' widens the tolerance by so much. */
  readonly aboutL: number;
}

export interface FillAccountInput {
  readonly systemVolumeL?: number | undefined;
  readonly missingOnArrival?: CardVolume | undefined;
  readonly drained?: Drained | undefined;
  readonly firstFill?: Poured | undefined;
  readonly afterShortRun?: Poured | undefined;
  readonly afterRunHot?: Poured | undefined;
  readonly nextMorning?: (CardVolume & Poured) | undefined;
  /** What additive and water, measured apart, shrink by on mixing: the recipe's figure. */
  readonly shrinkL?: number | undefined;
  readonly tolerances?: Partial<FillTolerances> | undefined;
}

/** One stage for the picture. */
export interface FillStep {
  readonly stage: FillStage;
  readonly volumeL: number;
  readonly isAbout: boolean;
  /** What is in by then of the space to fill. */
  readonly filledL: number;
  readonly stillMissingL: number;
}

/** `over`: more went in than there was space for. */
export type ShortfallVerdict = 'not-yet' | 'within' | 'short' | 'over';
export type MorningVerdict = 'not-yet' | 'within' | 'air-came-out' | 'look-for-leak';

export interface FillAccount extends Grounds {
  /** Missing on arrival plus drained. */
  readonly spaceL: number;
  /** Poured up to the hot run, shrink taken off. */
  readonly filledL: number;
  /** Space less filled; negative: more went in. */
  readonly shortfallL: number;
  readonly shortfallToleranceL: number;
  readonly shortfall: ShortfallVerdict;
  readonly morningL: number | null;
  readonly morningToleranceL: number;
  readonly morning: MorningVerdict;
  readonly steps: readonly FillStep[];
  /** New product for the invoice. */
  readonly productUsedL: number;
  /** Kept of what was drained, put back of it, and left over. */
  readonly keptL: number;
  readonly keptUsedL: number;
  readonly keptLeftL: number;
  /** For the waste record: drained and not kept. What is left of the kept joins it unless it stays with the car. */
  readonly wasteL: number;
  readonly tolerances: FillTolerances;
}
