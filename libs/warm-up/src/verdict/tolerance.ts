/** Makers' tolerance on the opening temperature: ±2 °C in most service manuals, ±3 °C in TM 5-3825-229-14&P. */
export const TOLERANCE_K = 3;
/** Tolerance, sensor and this method together: less than so far below the mark is no finding. */
export const EARLY_K = 5;
/** So far above the mark the mark is in doubt, or the fan ended the climb. */
export const LATE_K = 6;
