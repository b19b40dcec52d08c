export { creditDifference } from './credit-lines/credit-difference.ts';
export {
  type CreditDifference,
  type CreditLine,
  type CreditMatch,
  type CreditMatching,
  type CreditMatchingQuestion,
  type CreditUnit,
  type DifferenceKind,
  type RecognisedLine,
  type SecondLine,
  type UnknownLine,
  type UnsureReason,
} from './credit-lines/credit-matching.types.ts';
export { matchCreditLines } from './credit-lines/match-credit-lines.ts';
export { type LineKind } from './lines/line-words.ts';
export { recogniseLine } from './lines/recognise-line.ts';
export { type MatchingInputCode, MatchingInputError, type MatchingProblem } from './matching-input-error.ts';
export { matchStatement } from './statements/match-statement.ts';
export {
  type RecognisedStatementLine,
  type SecondStatementLine,
  type StatementDifference,
  type StatementDocument,
  type StatementLine,
  type StatementMatch,
  type StatementMatching,
  type StatementQuestion,
} from './statements/statement.types.ts';
