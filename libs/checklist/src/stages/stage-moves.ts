import { type Stage } from './stages.ts';

/** Why a move exists: the job goes on, goes back, ends early, never began, or the tool itself draws the line under it. */
export type StageMoveKind = 'forward' | 'back' | 'early-end' | 'never-came' | 'by-the-tool';

export interface StageMove {
  readonly from: Stage;
  readonly to: Stage;
  readonly kind: StageMoveKind;
}

/** Every move of a job. A template that lacks a stage may step over it (see `canChangeStage`); nothing else is allowed. */
export const STAGE_MOVES: readonly StageMove[] = [
  { from: 'spoken-of', to: 'expected', kind: 'forward' },
  { from: 'expected', to: 'standing', kind: 'forward' },
  { from: 'standing', to: 'opened', kind: 'forward' },
  { from: 'opened', to: 'closed-up', kind: 'forward' },
  { from: 'closed-up', to: 'filled', kind: 'forward' },
  { from: 'filled', to: 'run-hot', kind: 'forward' },
  { from: 'run-hot', to: 'settling', kind: 'forward' },
  { from: 'settling', to: 'settled', kind: 'forward' },
  { from: 'settled', to: 'keys-out', kind: 'forward' },

  { from: 'closed-up', to: 'opened', kind: 'back' },
  { from: 'filled', to: 'opened', kind: 'back' },
  { from: 'run-hot', to: 'opened', kind: 'back' },
  { from: 'settling', to: 'opened', kind: 'back' },
  { from: 'settled', to: 'opened', kind: 'back' },
  { from: 'run-hot', to: 'filled', kind: 'back' },
  { from: 'settling', to: 'filled', kind: 'back' },

  { from: 'standing', to: 'keys-out', kind: 'early-end' },
  { from: 'run-hot', to: 'keys-out', kind: 'early-end' },
  { from: 'settling', to: 'keys-out', kind: 'early-end' },

  { from: 'spoken-of', to: 'fell-through', kind: 'never-came' },
  { from: 'expected', to: 'fell-through', kind: 'never-came' },

  { from: 'keys-out', to: 'squared', kind: 'by-the-tool' },
  { from: 'squared', to: 'keys-out', kind: 'by-the-tool' },
];
