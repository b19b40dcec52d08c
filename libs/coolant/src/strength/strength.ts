/** How strong a mixture of pure glycol and water is, all three ways of saying it. */
export interface Strength {
  /** Volume % of pure glycol, by the published table's volume column. */
  readonly volumePercent: number;
  /** Mass % of pure glycol; null between the table's end and 60 volume %, where nothing is published. */
  readonly massPercent: number | null;
  /** Where the first ice crystals form. */
  readonly freezingPointC: number;
  /** True where the mixture is stronger than the table's end: it then protects at least this far. */
  readonly isAtLeast: boolean;
}

/** A mixture's strength as people give it: exactly one of the three, always of pure glycol. */
export interface StrengthInput {
  readonly volumePercent?: number | undefined;
  readonly massPercent?: number | undefined;
  readonly freezingPointC?: number | undefined;
}
