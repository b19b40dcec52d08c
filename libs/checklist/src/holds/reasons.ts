/** Why a hold point other than the cold one was passed without its evidence. The owner sees each. */
export const PASS_REASONS = ['not-on-this-car', 'cannot-be-reached', 'tool-not-here', 'manual-silent', 'customer-cannot-wait'] as const;

export type PassReason = (typeof PASS_REASONS)[number];

export const PASS_REASON_WORDS: Readonly<Record<PassReason, string>> = {
  'not-on-this-car': 'This car has no such thing',
  'cannot-be-reached': "Can't be seen or reached here",
  'tool-not-here': "The tool or instrument isn't here",
  'manual-silent': 'The manual says nothing about it',
  'customer-cannot-wait': "The customer can't wait",
};

/** Why the engine was opened without a reading under the limit. */
export const COLD_REASONS = ['too-warm', 'unsure', 'not-measured'] as const;

export type ColdReason = (typeof COLD_REASONS)[number];

export const COLD_REASON_WORDS: Readonly<Record<ColdReason, string>> = {
  'too-warm': 'Warmer than the limit',
  unsure: "The instrument can't tell",
  'not-measured': 'Not measured',
};
