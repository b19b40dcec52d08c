import { type VolumeUnit } from '#libs/units';
import { ChartInputError } from '../chart-input-error.ts';
import { checkNotNegative } from '../check-not-negative.ts';
import { type KnownBy, type Verdict } from '../drawing.ts';

/** A measured volume; an 'about' is one that nobody read off a mark. */
export interface FillAmount {
  readonly volumeL: number;
  readonly isAbout?: boolean;
}

/** What came out of the system and what went in, stage by stage; null is not read or not yet. */
export interface FillAccountData {
  /** Null draws the dashed example. */
  readonly holdsL: number | null;
  readonly holdsKnownBy: KnownBy;
  readonly missingOnArrival: FillAmount | null;
  readonly drainedKept: FillAmount | null;
  readonly drainedWaste: FillAmount | null;
  readonly firstFill: FillAmount | null;
  readonly afterShortRun: FillAmount | null;
  readonly afterRunHot: FillAmount | null;
  readonly nextMorning: FillAmount | null;
  /** What product and water shrink by on mixing: of the first fill, so much fills nothing. */
  readonly shrinkL?: number;
  /** How far the filled volume may lie from the mark. */
  readonly toleranceL: number;
  /** The most a tight system takes next morning. */
  readonly morningLimitL: number;
  readonly verdict?: Verdict;
  readonly morningVerdict?: Verdict;
  /** What the vessels are ruled in; L where left out. Volumes come in litres all the same. */
  readonly unit?: VolumeUnit;
}

/** The stages in the order they happen. */
export const OUT_STAGES = ['missingOnArrival', 'drainedKept', 'drainedWaste'] as const;
export const IN_STAGES = ['firstFill', 'afterShortRun', 'afterRunHot', 'nextMorning'] as const;
export type FillStage = (typeof OUT_STAGES)[number] | (typeof IN_STAGES)[number];

export const STAGE_WORDS: Readonly<Record<FillStage, string>> = {
  missingOnArrival: 'missing on arrival',
  drainedKept: 'drained, kept for this car',
  drainedWaste: 'drained, waste',
  firstFill: 'first fill',
  afterShortRun: 'after the short run',
  afterRunHot: 'after running hot',
  nextMorning: 'next morning',
};

/** The sums of the account. */
export interface FillSums {
  readonly outL: number;
  readonly staysL: number;
  /** As poured; the shrink is not taken off. */
  readonly inL: number;
  readonly shrinkL: number;
  /** Above zero: over the mark; below: short of it. */
  readonly differenceL: number;
}

/** Adds up the account. */
export function fillSums(data: FillAccountData, holdsL: number): FillSums {
  const sum = (stages: readonly FillStage[]): number => stages.reduce((total, stage) => total + (data[stage]?.volumeL ?? 0), 0);
  const outL = sum(OUT_STAGES);
  const inL = sum(IN_STAGES);
  const shrinkL = Math.min(data.shrinkL ?? 0, data.firstFill?.volumeL ?? 0);
  return { outL, inL, shrinkL, staysL: Math.max(0, holdsL - outL), differenceL: inL - shrinkL - outL };
}

/** No car holds more; a volume beyond is a slip of the unit. */
const MOST_L = 1000;

/**
 * Refuses volumes that can't be.
 *
 * @throws ChartInputError naming the volume.
 */
export function checkFillAccount(data: FillAccountData): void {
  const volumes: readonly (readonly [string, number])[] = [
    ['toleranceL', data.toleranceL],
    ['morningLimitL', data.morningLimitL],
    ['shrinkL', data.shrinkL ?? 0],
    ...[...OUT_STAGES, ...IN_STAGES].map((stage) => [`${stage}.volumeL`, data[stage]?.volumeL ?? 0] as const),
  ];
  for (const [field, volumeL] of volumes) {
    checkNotNegative(volumeL, field);
    if (volumeL > MOST_L) throw new ChartInputError('out-of-range', field, `${field} is ${volumeL} L: enter litres, not millilitres.`);
  }
  if (data.holdsL !== null && (data.holdsL < 0.1 || data.holdsL > MOST_L)) {
    throw new ChartInputError('out-of-range', 'holdsL', `A system of ${data.holdsL} L can't be drawn: enter 0.1 to ${MOST_L} L.`);
  }
}
