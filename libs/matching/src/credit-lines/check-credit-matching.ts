import { amountProblems, dateProblems, idProblems } from '../lines/field-problems.ts';
import { MatchingInputError, type MatchingProblem } from '../matching-input-error.ts';
import { type CreditLine, type CreditMatchingQuestion, type CreditUnit } from './credit-matching.types.ts';

const MOST_PIECES = 10_000;
const MOST_PIECES_IN_ALL = 50_000;

/**
 * Refuses lines and units that can't be matched as they are.
 *
 * @throws MatchingInputError naming every field to change
 */
export function checkCreditMatching({ lines, units, asOf, amountTolerance = '0' }: CreditMatchingQuestion): void {
  const problems = [
    ...idProblems(lines, { list: 'lines', words: 'line' }),
    ...idProblems(units, { list: 'units', words: 'unit' }),
    ...lines.flatMap(lineProblems),
    ...units.flatMap(unitProblems),
    ...dateProblems(asOf, { field: 'asOf', words: 'The day' }),
    ...amountProblems(amountTolerance, { field: 'amountTolerance', words: 'The tolerance of amounts' }, { least: 0 }),
  ];
  if (problems.length > 0) throw new MatchingInputError('malformed', problems);
  const pieces = lines.reduce((sum, { quantity }) => sum + quantity, 0);
  if (pieces <= MOST_PIECES_IN_ALL) return;
  const message = `The lines have ${pieces} pieces in all: match ${MOST_PIECES_IN_ALL} or fewer at once, one document or month at a time.`;
  throw new MatchingInputError('too-many', [{ field: 'lines', message }]);
}

function lineProblems({ quantity, net, date }: CreditLine, index: number): MatchingProblem[] {
  const isCount = Number.isInteger(quantity) && quantity >= 1 && quantity <= MOST_PIECES;
  return [
    ...(isCount
      ? []
      : [
          {
            field: `lines[${index}].quantity`,
            message: `The quantity of line ${index + 1} is ${quantity}: units are whole, give 1 to ${MOST_PIECES}.`,
          },
        ]),
    ...amountProblems(net, { field: `lines[${index}].net`, words: `The net of line ${index + 1}` }),
    ...dateProblems(date, { field: `lines[${index}].date`, words: `The date of line ${index + 1}` }),
  ];
}

function unitProblems(
  { id, charged, credited = '0', restockingPercent = '0', handedOverOn, creditDueOn }: CreditUnit,
  index: number,
): MatchingProblem[] {
  const field = `units[${index}]`;
  const percent = amountProblems(
    restockingPercent,
    { field: `${field}.restockingPercent`, words: `The restocking of unit ${id}` },
    { least: 0 },
  );
  const isTooMuch = percent.length === 0 && Number(restockingPercent) > 100;
  return [
    ...amountProblems(charged, { field: `${field}.charged`, words: `What unit ${id} was charged at` }, { least: 0 }),
    ...amountProblems(credited, { field: `${field}.credited`, words: `What unit ${id} was credited with` }, { least: 0 }),
    ...percent,
    ...(isTooMuch
      ? [{ field: `${field}.restockingPercent`, message: `The restocking of unit ${id} is ${restockingPercent} %: give 100 or less.` }]
      : []),
    ...dateProblems(handedOverOn, { field: `${field}.handedOverOn`, words: `The day unit ${id} left` }),
    ...dateProblems(creditDueOn, { field: `${field}.creditDueOn`, words: `The day the credit of unit ${id} is due` }),
  ];
}
