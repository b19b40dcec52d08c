import { amountProblems, dateProblems, idProblems } from '../lines/field-problems.ts';
import { MatchingInputError } from '../matching-input-error.ts';
import { type StatementQuestion } from './statement.types.ts';

/**
 * Refuses lines and documents that can't be matched as they are.
 *
 * @throws MatchingInputError naming every field to change
 */
export function checkStatement({ lines, documents, amountTolerance = '0' }: StatementQuestion): void {
  const problems = [
    ...idProblems(lines, { list: 'lines', words: 'line' }),
    ...idProblems(documents, { list: 'documents', words: 'document' }),
    ...lines.flatMap(({ amount, date }, index) => [
      ...amountProblems(amount, { field: `lines[${index}].amount`, words: `The amount of line ${index + 1}` }),
      ...dateProblems(date, { field: `lines[${index}].date`, words: `The date of line ${index + 1}` }),
    ]),
    ...documents.flatMap(({ id, total, date }, index) => [
      ...amountProblems(total, { field: `documents[${index}].total`, words: `The total of document ${id}` }, { least: 0 }),
      ...dateProblems(date, { field: `documents[${index}].date`, words: `The date of document ${id}` }),
    ]),
    ...amountProblems(amountTolerance, { field: 'amountTolerance', words: 'The tolerance of amounts' }, { least: 0 }),
  ];
  if (problems.length > 0) throw new MatchingInputError('malformed', problems);
}
