/** What is remembered of a car's cooling system, by the keys of its records. */
export const FACT_KEYS = ['capacity', 'cap', 'glycol', 'technology', 'strength', 'freezing-point', 'coolant-changed'] as const;
export type FactKey = (typeof FACT_KEYS)[number];

export const FACT_WORDS: Readonly<Record<FactKey, string>> = {
  capacity: 'System holds',
  cap: 'Cap',
  glycol: 'Glycol',
  technology: 'Technology',
  strength: 'Strength, % of pure glycol',
  'freezing-point': 'Freezing point read',
  'coolant-changed': 'Coolant changed',
};
