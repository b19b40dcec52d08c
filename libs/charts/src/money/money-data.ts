/** An amount as a number for its bar and as the caller writes it. */
export interface MoneyAmount {
  readonly amount: number;
  readonly text: string;
}

/** What came back and what was lost in one month. */
export interface MoneyMonth {
  readonly label: string;
  readonly recovered: MoneyAmount;
  readonly lost: MoneyAmount;
}

/** Money still out, by how long. */
export interface MoneyAge {
  readonly label: string;
  readonly out: MoneyAmount;
  /** Beyond what the suppliers' terms allow; hatched and said in words. */
  readonly isLate?: boolean;
}

/** Two pictures of money, told apart by their form. */
export type MoneyBarsData =
  { readonly form: 'by-month'; readonly months: readonly MoneyMonth[] } | { readonly form: 'by-age'; readonly ages: readonly MoneyAge[] };
