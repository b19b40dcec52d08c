import { type CardState, type Fill } from '#libs/checklist';

export interface FillSoFar {
  /** Litres that came out, over every time the system was opened. */
  readonly drainedL: number | null;
  readonly isDrainedAbout: boolean;
  /** Below the cold mark on arrival; null: not noted, or the tank was empty. */
  readonly missingL: number | null;
  readonly isTankEmpty: boolean;
  /** Clean enough to go back in, less what went back in before the system was opened again. */
  readonly keptL: number;
  /** What went in before the system was opened again. */
  readonly filledBeforeL: number;
  /** The system has been opened more than once. */
  readonly isOpenedAgain: boolean;
  readonly fills: readonly Fill[];
}

const total = (fills: readonly Fill[], amount: (fill: Fill) => number): number => fills.reduce((sum, fill) => sum + amount(fill), 0) / 1000;

/** What the card says of volumes, with the fills of an earlier time round told apart from this one's. */
export function fillSoFar(state: CardState): FillSoFar {
  const { numbers, levels, fills } = state.facts;
  const round = state.steps['first-fill']?.round ?? 0;
  const roundOf = (fill: Fill): number =>
    state.steps[fill.step]?.history.find(({ actionId }) => actionId === fill.actionId)?.round ?? round;
  const before = fills.filter((fill) => roundOf(fill) < round);
  const kept = numbers['keptL']?.value ?? 0;
  return {
    drainedL: numbers['drainedL']?.value ?? null,
    isDrainedAbout: numbers['drainedL']?.about ?? false,
    missingL: numbers['missingOnArrivalL']?.value ?? null,
    isTankEmpty: levels['missingOnArrivalL'] === null,
    keptL: Math.max(0, kept - total(before, ({ keptMl }) => keptMl)),
    filledBeforeL: total(before, ({ productMl, waterMl, keptMl }) => productMl + waterMl + keptMl),
    isOpenedAgain: round > 0,
    fills,
  };
}
