/** Mass %, density at 20 °C in kg/L, refractive index at 20 °C, freezing point in °C. */
export type CrcRow = readonly [number, number, number, number];

/**
 * Ethylene glycol in water: a check on strength, density and refractive index, not used in computing.
 *
 * Source: CRC Handbook of Chemistry and Physics, 102nd edition (2021), "Concentrative properties of aqueous solutions",
 * 20 °C; read in the repository amosonabike/CRC-Solution-Properties- (D. Hardy, MIT licence, commit 5eb7053b).
 * Table content copyright CRC.
 */
export const CRC_ETHYLENE: readonly CrcRow[] = [
  [0.5, 0.9988, 1.3335, -0.15],
  [1, 0.9995, 1.3339, -0.3],
  [2, 1.0007, 1.3348, -0.61],
  [3, 1.0019, 1.3358, -0.92],
  [4, 1.0032, 1.3367, -1.24],
  [5, 1.0044, 1.3377, -1.58],
  [6, 1.0057, 1.3386, -1.91],
  [7, 1.007, 1.3396, -2.26],
  [8, 1.0082, 1.3405, -2.62],
  [9, 1.0095, 1.3415, -2.99],
  [10, 1.0108, 1.3425, -3.37],
  [12, 1.0134, 1.3444, -4.16],
  [14, 1.0161, 1.3464, -5.01],
  [16, 1.0188, 1.3484, -5.91],
  [18, 1.0214, 1.3503, -6.89],
  [20, 1.0241, 1.3523, -7.93],
  [24, 1.0296, 1.3564, -10.28],
  [28, 1.035, 1.3605, -13.03],
  [32, 1.0405, 1.3646, -16.23],
  [36, 1.046, 1.3687, -19.82],
  [40, 1.0514, 1.3728, -23.84],
  [44, 1.0567, 1.3769, -28.32],
  [48, 1.0619, 1.3811, -33.3],
  [52, 1.067, 1.3851, -38.81],
  [56, 1.0719, 1.3892, -44.83],
  [60, 1.0765, 1.3931, -51.23],
];
