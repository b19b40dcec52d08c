/** The five hold points: nowhere else does the card stop a person. */
export const HOLD_KEYS = ['safe-to-open', 'variant-settled', 'closed-and-torqued', 'clear-of-tools-and-fan', 'proof'] as const;

export type HoldKey = (typeof HOLD_KEYS)[number];

export interface HoldWords {
  readonly title: string;
  /** What may not begin while it is shut. */
  readonly protects: string;
  /** What opens it. */
  readonly opensBy: string;
}

export const HOLD_WORDS: Readonly<Record<HoldKey, HoldWords>> = {
  'safe-to-open': {
    title: 'Safe to open',
    protects: 'opening and draining',
    opensBy: 'Measure the engine cold: the reading with its full uncertainty at most 50 °C, and no pressure.',
  },
  'variant-settled': {
    title: 'Variant settled',
    protects: 'fitting',
    opensBy: 'Confirm on the Parts bench which variant fits, or say why it is fitted unconfirmed.',
  },
  'closed-and-torqued': {
    title: 'Closed and torqued',
    protects: 'filling',
    opensBy: "Enter what the wrench was set at, how many of how many, in sequence, with the manual's document and page.",
  },
  'clear-of-tools-and-fan': {
    title: 'Clear of tools and fan',
    protects: 'starting the engine',
    opensBy: 'Count the tools back; hands, sleeves and leads clear of belts and fan.',
  },
  proof: {
    title: 'Proof',
    protects: 'handing the keys over',
    opensBy: 'Both heater hoses hot, radiator side gone from cold to hot, no leak.',
  },
};
