import { ASHRAE_DENSITY, ASHRAE_DENSITY_VOLUME_PERCENT } from '../data/ashrae-density.ts';
import { type Glycol } from '../glycol.ts';
import { item } from '../numeric/item.ts';

/** The position below a value in an even scale, and how far on to the next. */
function place(value: number, first: number, step: { size: number; count: number }): { index: number; share: number } {
  const position = (value - first) / step.size;
  const index = Math.min(Math.max(0, Math.floor(position)), step.count - 2);
  return { index, share: position - index };
}

/**
 * Density by the ASHRAE table, read between its rows and columns by straight lines.
 *
 * @param glycol Which glycol
 * @param at Temperature in °C and volume % of glycol
 * @returns Density in kg/L, or null outside the table (under 10 or over 60 volume %, over 100 °C, near freezing)
 * @example ashraeDensityKgPerL('ethylene', { tempC: 20, volumePercent: 50 }) // 1.07335
 */
export function ashraeDensityKgPerL(glycol: Glycol, at: { readonly tempC: number; readonly volumePercent: number }): number | null {
  const rows = ASHRAE_DENSITY[glycol];
  const columns = ASHRAE_DENSITY_VOLUME_PERCENT;
  const firstC = item(rows, 0)[0];
  const lastC = item(rows, rows.length - 1)[0];
  const firstPercent = item(columns, 0);
  const lastPercent = item(columns, columns.length - 1);
  if (at.tempC < firstC || at.tempC > lastC || at.volumePercent < firstPercent || at.volumePercent > lastPercent) return null;
  const row = place(at.tempC, firstC, { size: 5, count: rows.length });
  const column = place(at.volumePercent, firstPercent, { size: 10, count: columns.length });
  const inRow = (index: number): number | null => {
    const cells = item(rows, index);
    const low = cells[column.index + 1] ?? null;
    const high = cells[column.index + 2] ?? null;
    return low === null || high === null ? null : low + column.share * (high - low);
  };
  const colder = inRow(row.index);
  const warmer = inRow(row.index + 1);
  return colder === null || warmer === null ? null : (colder + row.share * (warmer - colder)) / 1000;
}
