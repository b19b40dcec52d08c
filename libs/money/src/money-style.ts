/** How a place writes numbers: marks and grouping. */
export interface NumberMarks {
  readonly decimalMark: '.' | ',';
  readonly groupMark: '' | '.' | ',' | ' ' | '\u00a0' | '\u202f' | "'" | '’';
  /** 'threes' 1,234,567; 'indian' 12,34,567. */
  readonly grouping: 'threes' | 'indian';
  /** Whole digits from which grouping starts: 4 groups 1,234; 5 leaves 1234 whole. */
  readonly groupFrom: 4 | 5;
}

/** How an amount of money is shown. */
export interface MoneyStyle extends NumberMarks {
  readonly places: number;
  /** Sign or code, null to show the number alone (columns of a table that name the currency once). */
  readonly currencyText: string | null;
  readonly currencyFirst: boolean;
  readonly currencyGap: '' | '\u00a0' | '\u202f';
}
