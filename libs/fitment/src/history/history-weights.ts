/** How much an event counts; a fitting of today counts 1. */
export interface HistoryWeights {
  /** Count that every candidate starts with: how many fittings it takes to be believed. */
  readonly baseCount: number;
  /** Days after which an event counts half. */
  readonly halfLifeDays: number;
  /** A catalogue's or supplier's listing. */
  readonly listing: number;
  /** What is left of a fitting after a comeback, by its cause. */
  readonly comeback: { readonly part: number; readonly work: number; readonly other: number };
}

/** Common practice, no source: three years' half-life, listings a quarter, a failed part a tenth. */
export const defaultHistoryWeights: HistoryWeights = {
  baseCount: 1,
  halfLifeDays: 1095,
  listing: 0.25,
  comeback: { part: 0.1, work: 0.9, other: 0.5 },
};
