/** What was measured of the water, or asked of the water company. */
export interface WaterAnalysis {
  readonly chlorideMgL?: number | undefined;
  readonly sulfateMgL?: number | undefined;
  /** As calcium carbonate. */
  readonly hardnessMgL?: number | undefined;
  readonly dissolvedSolidsMgL?: number | undefined;
  readonly pH?: number | undefined;
}

export interface WaterLimit {
  readonly key: keyof WaterAnalysis;
  readonly name: string;
  readonly unit: string;
  readonly least: number | null;
  readonly most: number;
}

/**
 * Limits of water for mixing coolant.
 *
 * Source: heavy-equipment operator manual, coolant mixing page (read). The same chloride, sulphate and hardness limits
 * are quoted from ASTM D4985 by an additive maker's bulletin 99.023 (read; it prints 310 mg/L of dissolved solids,
 * probably a misprint for 340).
 */
export const WATER_LIMITS: readonly WaterLimit[] = [
  { key: 'chlorideMgL', name: 'Chloride', unit: 'mg/L', least: null, most: 40 },
  { key: 'sulfateMgL', name: 'Sulphate', unit: 'mg/L', least: null, most: 100 },
  { key: 'hardnessMgL', name: 'Hardness as calcium carbonate', unit: 'mg/L', least: null, most: 170 },
  { key: 'dissolvedSolidsMgL', name: 'Dissolved solids', unit: 'mg/L', least: null, most: 340 },
  { key: 'pH', name: 'pH', unit: '', least: 5.5, most: 9 },
];
