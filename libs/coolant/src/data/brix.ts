/** Sugar in water: mass % (the Brix scale) against refractive index at 20 °C and the sodium line. */
export interface BrixRow {
  readonly brix: number;
  readonly refractiveIndex: number;
}

const row = (brix: number, refractiveIndex: number): BrixRow => ({ brix, refractiveIndex });

/**
 * What an instrument with a Brix scale shows for a given refractive index.
 *
 * Source: CRC Handbook of Chemistry and Physics, 102nd edition (2021), "Concentrative properties of aqueous solutions",
 * sucrose, 20 °C; read in the repository amosonabike/CRC-Solution-Properties- (D. Hardy, MIT licence, commit 5eb7053b).
 * Table content copyright CRC. The row for no sugar is the index of water that the ethylene glycol fit starts from.
 */
export const BRIX: readonly BrixRow[] = [
  row(0, 1.333003),
  row(0.5, 1.3337),
  row(1, 1.3344),
  row(2, 1.3359),
  row(3, 1.3373),
  row(4, 1.3388),
  row(5, 1.3403),
  row(6, 1.3418),
  row(7, 1.3433),
  row(8, 1.3448),
  row(9, 1.3463),
  row(10, 1.3478),
  row(11, 1.3494),
  row(12, 1.3509),
  row(13, 1.3525),
  row(14, 1.3541),
  row(15, 1.3557),
  row(16, 1.3573),
  row(17, 1.3589),
  row(18, 1.3606),
  row(19, 1.3622),
  row(20, 1.3639),
  row(22, 1.3672),
  row(24, 1.3706),
  row(26, 1.3741),
  row(28, 1.3776),
  row(30, 1.3812),
  row(32, 1.3848),
  row(34, 1.3885),
  row(36, 1.3922),
  row(38, 1.396),
  row(40, 1.3999),
  row(42, 1.4038),
  row(44, 1.4078),
  row(46, 1.4118),
  row(48, 1.4159),
  row(50, 1.4201),
  row(60, 1.4419),
  row(70, 1.4654),
  row(80, 1.4906),
  row(84, 1.501),
];
