import { type FitmentProblem } from '../fitment-input-error.ts';
import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';
import { type OrderQuestion } from './order-plan.types.ts';

/** With more, the 2ⁿ orders and 3ⁿ recourses take longer than a person waits. */
const MOST_CANDIDATES = 12;
const SUM_SLACK = 1e-9;
/** Above it, floating-point sums would lose the pence; no part costs that much. */
const MOST_MONEY = 1e9;

/**
 * Refuses what no order can be planned from.
 *
 * @throws FitmentInputError `malformed` for bad figures, `impossible` for more than 12 candidates or probabilities above 1
 */
export function checkOrderQuestion(question: OrderQuestion): void {
  refuseProblems('malformed', [
    ...moneyProblems(question),
    ...question.candidates.flatMap((candidate, index) => [
      ...numberProblems(candidate.probability, {
        field: `candidates[${index}].probability`,
        words: `The probability of ${candidate.id}`,
        min: 0,
        max: 1,
      }),
      ...numberProblems(candidate.price, {
        field: `candidates[${index}].price`,
        words: `The price of ${candidate.id}`,
        min: 0,
        max: MOST_MONEY,
      }),
      ...numberProblems(candidate.restockingPercent, {
        field: `candidates[${index}].restockingPercent`,
        words: `The restocking charge of ${candidate.id} in percent`,
        min: 0,
        max: 100,
      }),
    ]),
  ]);
  refuseProblems('malformed', countProblems(question));
  refuseProblems('impossible', impossibilities(question));
}

function moneyProblems({ carriage, returnCarriage, delayCost, bayHoldCost = 0, recourse = 'blind' }: OrderQuestion): FitmentProblem[] {
  return [
    ...numberProblems(carriage, { field: 'carriage', words: 'The carriage of an order', min: 0, max: MOST_MONEY }),
    ...numberProblems(returnCarriage, { field: 'returnCarriage', words: 'The cost of a return trip', min: 0, max: MOST_MONEY }),
    ...numberProblems(delayCost, { field: 'delayCost', words: 'The cost of a delay', min: 0, max: MOST_MONEY }),
    ...numberProblems(bayHoldCost, { field: 'bayHoldCost', words: 'The cost of holding the bay', min: 0, max: MOST_MONEY }),
    ...(['blind', 'informed'].includes(recourse)
      ? []
      : [{ field: 'recourse', message: `The recourse is '${recourse}': give 'blind' or 'informed'.` }]),
  ];
}

function countProblems({ candidates }: OrderQuestion): FitmentProblem[] {
  if (candidates.length === 0) return [{ field: 'candidates', message: 'There is no candidate to order: add at least one variant.' }];
  return candidates.flatMap((candidate, index) =>
    candidates.findIndex((other) => other.id === candidate.id) === index
      ? []
      : [{ field: `candidates[${index}].id`, message: `The candidate ${candidate.id} is listed twice: leave one of them out.` }],
  );
}

function impossibilities({ candidates }: OrderQuestion): FitmentProblem[] {
  if (candidates.length > MOST_CANDIDATES) {
    return [
      {
        field: 'candidates',
        message: `${candidates.length} candidates make too many possible orders to compare: narrow them to ${MOST_CANDIDATES} or fewer, by engine code, build month or one more reading.`,
      },
    ];
  }
  const sum = candidates.reduce((total, candidate) => total + candidate.probability, 0);
  if (sum <= 1 + SUM_SLACK) return [];
  return [
    {
      field: 'candidates',
      message: `The probabilities add up to ${Number(sum.toFixed(4))}: only one variant can be right, so lower them to 1 or less in all.`,
    },
  ];
}
