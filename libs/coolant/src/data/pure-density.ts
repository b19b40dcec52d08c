import { type Glycol } from '../glycol.ts';

/** Water at 20 °C, kg/L. Source: CRC Handbook of Chemistry and Physics (0.99821). */
export const WATER_KG_PER_L = 0.9982;

/** The pure glycols at 20 °C, kg/L. Source: CRC Handbook of Chemistry and Physics (from memory). */
export const PURE_GLYCOL_KG_PER_L: Readonly<Record<Glycol, number>> = { ethylene: 1.1135, propylene: 1.0361 };
