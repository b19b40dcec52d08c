/** What one jug takes, measured apart. */
export interface Jug {
  readonly additiveMl: number;
  readonly waterMl: number;
}

/** Less than this left over is arithmetic, not another jug. */
const NOTHING_ML = 1e-6;

/**
 * The recipe shared out over jugs, each with the recipe's own proportion, the last one with what is left.
 *
 * @param amounts Additive and water of the recipe, L
 * @param jugL Size of the jug, L, above 0
 * @returns Exact amounts in mL; over all jugs they sum to the recipe. No jug where nothing is to be poured
 * @example jugs({ additiveL: 1.5, waterL: 1.5 }, 2) // [{ additiveMl: 1000, waterMl: 1000 }, { additiveMl: 500, waterMl: 500 }]
 */
export function jugs(amounts: { readonly additiveL: number; readonly waterL: number }, jugL: number): readonly Jug[] {
  const additiveMl = amounts.additiveL * 1000;
  const waterMl = amounts.waterL * 1000;
  const totalMl = additiveMl + waterMl;
  if (totalMl <= NOTHING_ML) return [];
  const jugMl = jugL * 1000;
  const full = Math.floor((totalMl + NOTHING_ML) / jugMl);
  const share = additiveMl / totalMl;
  const fullJug: Jug = { additiveMl: share * jugMl, waterMl: (1 - share) * jugMl };
  const restMl = totalMl - full * jugMl;
  const fullJugs = Array.from({ length: full }, () => fullJug);
  if (restMl <= NOTHING_ML) return fullJugs;
  const rest: Jug = { additiveMl: additiveMl - full * fullJug.additiveMl, waterMl: waterMl - full * fullJug.waterMl };
  return [...fullJugs, { additiveMl: Math.max(0, rest.additiveMl), waterMl: Math.max(0, rest.waterMl) }];
}
