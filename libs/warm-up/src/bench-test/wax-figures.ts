/**
 * Figures of plain wax thermostats read in service manuals: opening within ±2 °C (±3 °C in TM 5-3825-229-14&P), full lift 9 to 13 °C above
 * the mark, lift 7 to 14 mm by engine and 8 mm most often, shut again 5 °C below the mark (6 °C in the T-marked series). Water boils at
 * 100 °C, about 1 °C less for each 300 m (from memory). Wax follows a heated bath 10 to 20 s late (from memory).
 */
export const WAX = {
  toleranceK: 2,
  widestToleranceK: 3,
  fullLiftAboveK: { least: 9, most: 13 },
  liftMm: { usual: 8, least: 7 },
  shutBelowK: { usual: 5, most: 8 },
  waterBoilsC: 100,
  metresPerDegree: 300,
  lagS: 15,
} as const;
