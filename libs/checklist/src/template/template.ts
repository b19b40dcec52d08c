import { type HoldKey } from '../holds/holds.ts';
import { type Stage } from '../stages/stages.ts';
import { type Evidence } from './evidence.ts';

/** Figures of this car and job that a step shows in place. The template only names them. */
export type FigureName = 'drainVolume' | 'tray' | 'recipe' | 'torque' | 'tolerance' | 'capacity';

export type DebtKind = 'customer-money' | 'units-and-claims' | 'core-parts' | 'waste' | 'level-check' | 'after-log' | 'warranty-claim';

/** A step that never holds the car: unfinished when the keys go out, it becomes a dated debt of the job. */
export interface StepDebt {
  readonly kind: DebtKind;
  readonly dueDays: number;
}

export interface Step {
  readonly key: string;
  readonly title: string;
  readonly help: string;
  readonly evidence: Evidence;
  /** The step's evidence is the evidence of this hold point. */
  readonly hold?: HoldKey;
  /** Hold points that must be open before this step. */
  readonly behind?: readonly HoldKey[];
  /** Hold points that only count once the system has been opened on this card. */
  readonly behindOnceOpened?: readonly HoldKey[];
  readonly caution?: string;
  readonly optional?: boolean;
  readonly figures?: readonly FigureName[];
  /** The engine runs here: a cold reading taken before it is spent. */
  readonly runsEngine?: boolean;
  /** Stays as it is when the job goes back a stage. */
  readonly once?: boolean;
  readonly debt?: StepDebt;
}

export interface Phase {
  readonly key: string;
  readonly title: string;
  readonly stageBefore: Stage;
  readonly stageAfter: Stage;
  readonly engine: 'cold' | 'running' | 'any';
  /** For the plan: how long it usually takes, where, and how much of a person. */
  readonly minutes: number;
  readonly place: 'bay' | 'apron' | 'anywhere';
  readonly attendance: 'hands-on' | 'within-earshot' | 'nobody';
  readonly steps: readonly Step[];
}

/** The job reaches a stage when any, or all, of these steps are done. */
export interface StageMark {
  readonly stage: Stage;
  readonly when: 'any' | 'all';
  readonly steps: readonly string[];
}

export interface Template {
  readonly key: string;
  readonly version: number;
  readonly name: string;
  /** What it is for, and when it is the wrong card. */
  readonly about: string;
  readonly phases: readonly Phase[];
  readonly stageMarks: readonly StageMark[];
}
