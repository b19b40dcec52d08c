import { type Jug } from './jugs.ts';

/**
 * The recipe in whole marks of a jug. The rounding of one jug is made good by the next, so that over all jugs additive
 * and total are never more than half a mark off, and no jug is filled beyond its last mark.
 *
 * @param amounts Additive and water of the recipe, L
 * @param jug Size in mL, and the distance of its marks in mL (at most the size)
 * @returns Whole multiples of the mark
 * @example roundToMarks({ additiveL: 1.04, waterL: 0.99 }, { jugMl: 1000, markMl: 100 })
 * // [{ additiveMl: 500, waterMl: 500 }, { additiveMl: 500, waterMl: 500 }]
 */
export function roundToMarks(
  amounts: { readonly additiveL: number; readonly waterL: number },
  jug: { readonly jugMl: number; readonly markMl: number },
): readonly Jug[] {
  const marksPerJug = Math.floor(jug.jugMl / jug.markMl + 1e-9);
  const additiveMarks = Math.round((amounts.additiveL * 1000) / jug.markMl);
  const totalMarks = Math.max(additiveMarks, Math.round(((amounts.additiveL + amounts.waterL) * 1000) / jug.markMl));
  const count = Math.ceil(totalMarks / marksPerJug);
  const upTo = (jugs: number): { additive: number; total: number } => {
    const total = Math.min(totalMarks, jugs * marksPerJug);
    return { additive: Math.round((total / totalMarks) * additiveMarks), total };
  };
  return Array.from({ length: count }, (_unused, index) => {
    const before = upTo(index);
    const after = upTo(index + 1);
    const additive = after.additive - before.additive;
    return { additiveMl: additive * jug.markMl, waterMl: (after.total - before.total - additive) * jug.markMl };
  });
}
