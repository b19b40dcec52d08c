/** Where the job is, physically. One at a time. */
export const STAGES = [
  'spoken-of',
  'expected',
  'standing',
  'opened',
  'closed-up',
  'filled',
  'run-hot',
  'settling',
  'settled',
  'keys-out',
  'squared',
  'fell-through',
] as const;

export type Stage = (typeof STAGES)[number];

/** The stage as it is shown to staff. */
export const STAGE_WORDS: Readonly<Record<Stage, string>> = {
  'spoken-of': 'Spoken of',
  expected: 'Expected',
  standing: 'Standing',
  opened: 'Opened',
  'closed-up': 'Closed up',
  filled: 'Filled',
  'run-hot': 'Run hot',
  settling: 'Settling',
  settled: 'Settled',
  'keys-out': 'Keys out',
  squared: 'Squared',
  'fell-through': 'Fell through',
};

/** Position along the job; 'fell-through' stands outside it. */
export function stageRank(stage: Stage): number {
  return STAGES.indexOf(stage);
}
