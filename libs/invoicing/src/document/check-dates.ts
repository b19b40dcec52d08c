import { type FieldError } from '../outcome.ts';
import { type InvoiceDraft } from './invoice-document.ts';
import { isIsoDate } from './is-iso-date.ts';

/** Every date of a draft is a real day, and periods do not end before they start (BR-29). */
export function checkDates(draft: InvoiceDraft): FieldError[] {
  const dates: readonly (readonly [string, string | null | undefined, string])[] = [
    ['issueDate', draft.issueDate, 'The date of issue'],
    ['supplyDate', draft.supplyDate, 'The date of the work'],
    ['supplyPeriod.start', draft.supplyPeriod?.start, 'The first day of the work'],
    ['supplyPeriod.end', draft.supplyPeriod?.end, 'The last day of the work'],
    ['dueDate', draft.dueDate, 'The date to pay by'],
    ...draft.preceding.map(
      (reference, index) => [`preceding[${index}].issueDate`, reference.issueDate, `The date of ${reference.number}`] as const,
    ),
    ...draft.prepayments.map((payment, index) => [`prepayments[${index}].date`, payment.date, `The date of payment ${index + 1}`] as const),
  ];
  const bad = dates.flatMap(([field, date, what]) => {
    const known: string | null | undefined = date;
    if (known === null || known === undefined) return [];
    const real: boolean = isIsoDate(known);
    return real ? [] : [{ field, message: `${what} "${known}" is not a day of the calendar. Write it as 2026-06-10.` }];
  });
  return bad.length > 0 ? bad : checkOrder(draft);
}

function checkOrder(draft: InvoiceDraft): FieldError[] {
  const { start, end } = draft.supplyPeriod ?? {};
  const errors: FieldError[] = [];
  if (start !== undefined && end !== undefined && end < start)
    errors.push({ field: 'supplyPeriod.end', message: `The work ends on ${end}, before it starts on ${start}. Swap the two days.` });
  if (draft.dueDate !== undefined && draft.issueDate !== null && draft.dueDate < draft.issueDate)
    errors.push({
      field: 'dueDate',
      message: `The document is payable by ${draft.dueDate}, before its date ${draft.issueDate}. Choose a later day.`,
    });
  return errors;
}
