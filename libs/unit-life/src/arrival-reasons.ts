/** Why a unit came to be here. */
export const ARRIVAL_REASONS = ['ordered', 'surplus', 'wrong', 'damaged', 'substitute', 'replacement', 'found', 'taken-out'] as const;

export type ArrivalReason = (typeof ARRIVAL_REASONS)[number];

export const ARRIVAL_REASON_WORDS: Readonly<Record<ArrivalReason, string>> = {
  ordered: 'As ordered',
  surplus: 'More than ordered',
  wrong: 'Wrong piece',
  damaged: 'Damaged',
  substitute: 'Sent in place of the ordered one',
  replacement: 'Sent for one that went back',
  found: 'Found',
  'taken-out': 'Was in a car',
};

/**
 * Which pieces answer their order line. A substitute stands in for the ordered unit; a replacement of a piece that had not
 * answered (wrong, damaged) is the unit that was still expected. Wrong, damaged and surplus ones leave the line as it was.
 */
export const ANSWERS_LINE: Readonly<Record<ArrivalReason, boolean>> = {
  ordered: true,
  substitute: true,
  replacement: true,
  surplus: false,
  wrong: false,
  damaged: false,
  found: false,
  'taken-out': false,
};

/** Why a unit goes back. */
export const RETURN_REASONS = ['not-needed', 'wrong', 'damaged', 'failed'] as const;

export type ReturnReason = (typeof RETURN_REASONS)[number];
