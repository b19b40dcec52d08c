import { type ActionKind, type ByProof } from '../actions/action.ts';
import { type EvidenceValue, type FillAmounts, type TorqueEntry } from '../evidence/evidence-value.ts';
import { type HoldKey } from '../holds/holds.ts';
import { type Stage } from '../stages/stages.ts';
import { type FillStage } from '../template/evidence.ts';
import { type DebtKind, type Template } from '../template/template.ts';

/** What the card is told about its surroundings. */
export interface CardSetting {
  /** Nobody else is there: an engine that is not cold by a reading is waited for. */
  readonly onePersonSite: boolean;
  /** Where the desk had the job before the first step. */
  readonly startStage: Stage;
}

export interface TakenBack {
  readonly by: string;
  readonly readAt: string;
  readonly actionId: string;
  readonly reason: string | null;
}

/** One action that fitted, in its place. Nothing is ever removed; what is taken back says so. */
export interface HistoryEntry {
  readonly actionId: string;
  /** Position in the order of receipt. */
  readonly order: number;
  /** Which time round: a job that goes back a stage does its steps again. */
  readonly round: number;
  readonly kind: ActionKind;
  /** Step, phase or the whole card, as the action said. */
  readonly step: string;
  readonly value: unknown;
  readonly evidence: EvidenceValue | null;
  readonly by: string;
  readonly byProof: ByProof | 'confirmed';
  readonly readAt: string;
  readonly deviceId: string | null;
  readonly takenBack: TakenBack | null;
}

export type StepStatus = 'open' | 'done' | 'not-applicable' | 'passed' | 'passed-without' | 'taken-back' | 'let-go';

export interface StepState {
  readonly key: string;
  readonly state: StepStatus;
  /** The evidence that stands, or the last reading of a hold point that is still shut. */
  readonly value: EvidenceValue | null;
  readonly by: string | null;
  readonly readAt: string | null;
  readonly actionId: string | null;
  /** Why it stands like this: the reason given, or why a hold point stays shut. */
  readonly why: string | null;
  readonly round: number;
  readonly history: readonly HistoryEntry[];
  /** Orders of receipt at which it was completed, in every round. */
  readonly completions: readonly number[];
}

export interface HoldState {
  readonly key: HoldKey;
  readonly state: 'shut' | 'passed' | 'passed-without';
  /** Passed once, but no longer good: the engine has run since it was measured cold. */
  readonly spent: boolean;
  readonly why: string;
}

export type DifferenceCode =
  | 'not-understood'
  | 'same-id'
  | 'other-card'
  | 'unknown-step'
  | 'wrong-kind'
  | 'bad-value'
  | 'behind-hold'
  | 'not-now'
  | 'already-done'
  | 'hold-not-passed'
  | 'hold-reopened'
  | 'nothing-to-take-back'
  | 'needs-reason';

/** An action that no longer fits: kept whole and shown to a person. */
export interface Difference {
  readonly actionId: string | null;
  readonly action: unknown;
  readonly code: DifferenceCode;
  readonly why: string;
  readonly settled: { readonly by: string; readonly readAt: string; readonly words: string | null } | null;
}

export type WaitKind = 'yes' | 'part' | 'cold' | 'bay' | 'person' | 'customer' | 'outside-firm';

export interface Wait {
  readonly kind: WaitKind;
  /** The action that began it; null where the card itself knows (cold). */
  readonly actionId: string | null;
  readonly since: string;
  readonly until: string | null;
  readonly who: string;
  readonly words: string | null;
}

export interface Debt {
  readonly kind: DebtKind;
  readonly step: string | null;
  readonly state: 'open' | 'done' | 'let-go';
  readonly since: string;
  readonly due: string | null;
  readonly reason: string | null;
}

export interface Finding {
  readonly actionId: string;
  readonly step: string;
  readonly words: string;
  readonly severity: 'now' | 'soon' | 'watch';
  readonly photo: string | null;
  readonly by: string;
  readonly readAt: string;
}

export interface WorkTime {
  readonly step: string;
  readonly by: string;
  readonly startedAt: string;
  readonly stoppedAt: string | null;
  readonly actionId: string;
}

export interface NumberFact {
  readonly value: number;
  readonly about: boolean;
  readonly unit: string;
  readonly step: string;
  readonly actionId: string | null;
}

export interface Fill extends FillAmounts {
  readonly stage: FillStage;
  readonly step: string;
  readonly about: boolean;
  readonly actionId: string;
  readonly by: string;
  readonly readAt: string;
}

/** The card's figures by name, over every round that stands. */
export interface CardFacts {
  /** drainedL, keptL, wasteL, wasteBookedL, missingOnArrivalL, coldReadingC … */
  readonly numbers: Readonly<Record<string, NumberFact>>;
  readonly choices: Readonly<Record<string, { readonly choice: string; readonly asked: Readonly<Record<string, number>> }>>;
  /** mL below the cold mark by fact name; null: the tank was empty. */
  readonly levels: Readonly<Record<string, number | null>>;
  readonly lists: Readonly<Record<string, readonly string[]>>;
  readonly fills: readonly Fill[];
  readonly filledProductL: number;
  readonly filledWaterL: number;
  readonly filledKeptL: number;
  readonly filledL: number;
  readonly jugsPoured: number;
  readonly torques: readonly TorqueEntry[];
  readonly variant: string | null;
}

export interface CardState {
  readonly template: Template;
  readonly setting: CardSetting;
  readonly steps: Readonly<Record<string, StepState>>;
  /** Entries that belong to the card or a phase, not to a step. */
  readonly history: readonly HistoryEntry[];
  readonly received: readonly { readonly id: string; readonly text: string }[];
  readonly differences: readonly Difference[];
  readonly stage: Stage;
  /** Whether the system has been opened on this card. */
  readonly isOpened: boolean;
  readonly holds: Readonly<Partial<Record<HoldKey, HoldState>>>;
  readonly facts: CardFacts;
  readonly waits: readonly Wait[];
  readonly debts: readonly Debt[];
  readonly findings: readonly Finding[];
  readonly workTimes: readonly WorkTime[];
  /** Doubts to look at, in words: torque entries, amounts that don't add up. */
  readonly checks: readonly string[];
}
