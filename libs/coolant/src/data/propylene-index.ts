/** Mass % of propylene glycol against refractive index at 20 °C and the sodium line. */
export interface PropyleneIndexRow {
  readonly massPercent: number;
  readonly refractiveIndex: number;
}

const row = (massPercent: number, refractiveIndex: number): PropyleneIndexRow => ({ massPercent, refractiveIndex });

/**
 * Refractive index of propylene glycol in water: an estimate, because no published table was found.
 *
 * Computed by Lorentz-Lorenz mixing with Melinder's density (IIR 2010) and the pure liquids' index 1.4326 and densities
 * (from memory). The same method misses the published ethylene glycol table by at most 0.0010, about 1 mass %. The row
 * for water is the common value 1.3330 of the ethylene fit, so that both scales start at the same point.
 */
export const PROPYLENE_INDEX: readonly PropyleneIndexRow[] = [
  row(0, 1.333003),
  row(5, 1.3385),
  row(10, 1.344),
  row(15, 1.3496),
  row(20, 1.3554),
  row(25, 1.3613),
  row(30, 1.3672),
  row(35, 1.3732),
  row(40, 1.3791),
  row(45, 1.3848),
  row(50, 1.3904),
  row(55, 1.3957),
  row(60, 1.4008),
];
