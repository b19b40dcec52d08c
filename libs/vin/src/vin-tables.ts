/** Letter and digit values of 49 CFR 565.15 (read). Letters I, O and Q do not exist in a VIN. */
export const characterValues: Readonly<Record<string, number>> = Object.fromEntries(
  ['0', '1AJ', '2BKS', '3CLT', '4DMU', '5ENV', '6FW', '7GPX', '8HY', '9RZ'].flatMap((characters, value) =>
    [...characters].map((character) => [character, value]),
  ),
);

/** Weight of each of the 17 positions, 49 CFR 565.15 (read). Position 9, the check digit itself, weighs nothing. */
export const positionWeights: readonly number[] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/** Model-year letters of position 10 in the order of their years, the first standing for 1980 and 2010, 49 CFR 565.15 (read). */
export const modelYearCodes = 'ABCDEFGHJKLMNPRSTVWXY123456789';

/** First year of each 30-year cycle of the model-year code that can occur on a vehicle. */
export const cycleStarts: readonly number[] = [1980, 2010];
