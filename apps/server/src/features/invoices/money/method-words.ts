/** How money came or went, in words. */
export const METHOD_WORDS: Readonly<Record<string, string>> = { cash: 'cash', card: 'card', transfer: 'bank transfer', other: 'otherwise' };

export const METHODS = ['cash', 'card', 'transfer', 'other'] as const;

export const METHOD_OPTIONS = [
  { value: 'card', label: 'Card' },
  { value: 'cash', label: 'Cash' },
  { value: 'transfer', label: 'Bank transfer' },
  { value: 'other', label: 'Otherwise' },
];
