import { type Glycol } from '../glycol.ts';

/** log10(pressure in bar) = a − b / (temperature in K + c). */
export interface Antoine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * Vapour pressure of the pure glycols. Source: NIST Chemistry WebBook (public domain data); ethylene glycol read, valid
 * 323 to 473 K; propylene glycol from memory (gives the accepted normal boiling point of 188 °C).
 */
export const GLYCOL_ANTOINE: Readonly<Record<Glycol, Antoine>> = {
  ethylene: { a: 4.97012, b: 1914.951, c: -84.996 },
  propylene: { a: 6.07936, b: 2692.187, c: -17.94 },
};

/** Molar masses in g/mol. Source: IUPAC standard atomic weights (from memory). */
export const MOLAR_MASS = { water: 18.01528, ethylene: 62.068, propylene: 76.095 } as const;
