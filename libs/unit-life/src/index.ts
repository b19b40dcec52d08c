export { type Answer } from './answer.ts';
export {
  ANSWERS_LINE,
  ARRIVAL_REASON_WORDS,
  ARRIVAL_REASONS,
  type ArrivalReason,
  RETURN_REASONS,
  type ReturnReason,
} from './arrival-reasons.ts';
export { addDays, type Day, daysBetween } from './calendar-days.ts';
export { checkMove, type MoveRequest, type MoveRules } from './check-move.ts';
export {
  checkClaim,
  type Claim,
  claimAfter,
  type ClaimAnswer,
  type ClaimClosing,
  CLAIM_MOVES,
  CLAIM_STATES,
  type ClaimState,
  NO_CLAIM,
} from './claim.ts';
export { checkCoreMove, CORE_MOVES, CORE_STATES, type CoreMove, type CoreState } from './core-charge.ts';
export { dueToReturn, type ReturnCandidate, type ReturnContext, type ReturnDue } from './due-to-return.ts';
export { AGE_BANDS, type AgeBand, type ExposedUnit, exposure, type SupplierExposure } from './exposure.ts';
export { lineAccount, type LineAccount } from './line-account.ts';
export { checkMoneyEntry, MONEY_KINDS, type MoneyEntry, type MoneyKind } from './money-entry.ts';
export { openAmount } from './open-amount.ts';
export { type Recorded, recordUnitEvent, type UnitEvent } from './record-unit-event.ts';
export { STOCK_KINDS, stockAccount, type StockAccount, type StockKind, type StockMovement } from './stock-account.ts';
export {
  creditDueOn,
  expectedCredit,
  lastReturnDay,
  type SupplierTerms,
  type UnitDays,
  WINDOW_STARTS,
  type WindowStart,
} from './supplier-terms.ts';
export { type MadeMove, newUnit, type Unit } from './unit.ts';
export { unitDebts } from './unit-debts.ts';
export { UNIT_MOVES } from './unit-moves.ts';
export { END_PLACES, isEndPlace, UNIT_PLACE_WORDS, UNIT_PLACES, type UnitPlace } from './unit-places.ts';
export { unitsAccount, type UnitsAccount } from './units-account.ts';
