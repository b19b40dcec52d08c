export { type Action, ACTION_KINDS, type ActionKind, type ByProof, WHOLE_CARD } from './actions/action.ts';
export { readAction } from './actions/read-action.ts';
export { applyAction } from './apply-action.ts';
export { FREE_TAKE_BACK_MS } from './apply/take-back.ts';
export { canDo, type CanDo } from './card/can-do.ts';
export type {
  CardFacts,
  CardSetting,
  CardState,
  Debt,
  Difference,
  DifferenceCode,
  Fill,
  Finding,
  HistoryEntry,
  HoldState,
  NumberFact,
  StepState,
  StepStatus,
  TakenBack,
  Wait,
  WaitKind,
  WorkTime,
} from './card/card-state.ts';
export { DEBT_KINDS, DEBT_WORDS } from './card/debts.ts';
export { emptyCard } from './card/empty-card.ts';
export { nextSteps } from './card/next-steps.ts';
export { WAIT_KINDS, WAIT_WORDS } from './card/waits.ts';
export {
  type EvidenceValue,
  type FillAmounts,
  type LeftOff,
  type TorqueEntry,
  VARIANT_BASES,
  type VariantBasis,
} from './evidence/evidence-value.ts';
export { readEvidence } from './evidence/read-evidence.ts';
export { torqueInNm, torqueWarnings, type TorqueContext } from './evidence/torque-warnings.ts';
export { foldCard } from './fold-card.ts';
export { HOLD_KEYS, HOLD_WORDS, type HoldKey, type HoldWords } from './holds/holds.ts';
export { COLD_REASON_WORDS, COLD_REASONS, type ColdReason, PASS_REASON_WORDS, PASS_REASONS, type PassReason } from './holds/reasons.ts';
export { type ColdReading, type ColdVerdict, SAFE_TO_OPEN_LIMIT_C, safeToOpen } from './holds/safe-to-open.ts';
export { canChangeStage, type StageChangeContext } from './stages/can-change-stage.ts';
export { customerSentence } from './stages/customer-sentence.ts';
export { stageAfter } from './stages/stage-after.ts';
export { STAGE_MOVES, type StageMove, type StageMoveKind } from './stages/stage-moves.ts';
export { STAGE_WORDS, type Stage, STAGES } from './stages/stages.ts';
export {
  type Ask,
  type Evidence,
  type EvidenceKind,
  FILL_STAGES,
  type FillStage,
  type Instrument,
  type Method,
  type Option,
  type Place,
  type Range,
} from './template/evidence.ts';
export { findStep, phaseOf, stagesOf, stepsOf } from './template/steps-of.ts';
export type { DebtKind, FigureName, Phase, StageMark, Step, StepDebt, Template } from './template/template.ts';
export { COOLANT_CHANGE } from './templates/coolant-change.ts';
export { DIAGNOSIS_VISIT } from './templates/diagnosis-visit.ts';
export { TEMPLATES } from './templates/templates.ts';
export { THERMOSTAT_JOB } from './templates/thermostat-job.ts';
export type { Answer } from './words/answer.ts';
