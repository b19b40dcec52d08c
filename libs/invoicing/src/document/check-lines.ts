import { type FieldError } from '../outcome.ts';
import { type InvoiceDraft } from './invoice-document.ts';
import { type PriceAdjustment } from './invoice-line.ts';

/** Lines have a name, a unit and an id of their own; allowances and charges have a reason (BR-21, 23, 25, 33, 38, 42, 44). */
export function checkLines(draft: InvoiceDraft): FieldError[] {
  const seen = new Set<string>();
  const errors: FieldError[] = [];
  for (const [index, line] of draft.lines.entries()) {
    const path = `lines[${index}]`;
    const what = `Line ${index + 1}`;
    if (line.id.trim() === '' || seen.has(line.id))
      errors.push({ field: `${path}.id`, message: `${what} has no id of its own. Give it one.` });
    seen.add(line.id);
    if (line.name.trim() === '')
      errors.push({ field: `${path}.name`, message: `${what} does not say what it is for. Enter the work or the part.` });
    if (!/^[A-Z0-9]{2,3}$/.test(line.unit))
      errors.push({
        field: `${path}.unit`,
        message: `${what}: "${line.unit}" is no unit code. Choose a unit such as HUR (hour) or LTR (litre).`,
      });
    errors.push(...checkReasons(`${path}.allowances`, line.allowances, { what: `${what}: the allowance` }));
    errors.push(...checkReasons(`${path}.charges`, line.charges, { what: `${what}: the charge` }));
  }
  errors.push(...checkReasons('allowances', draft.allowances, { what: 'The allowance' }));
  errors.push(...checkReasons('charges', draft.charges, { what: 'The charge' }));
  return errors;
}

function checkReasons(field: string, adjustments: readonly PriceAdjustment[] | undefined, { what }: { what: string }): FieldError[] {
  return (adjustments ?? []).flatMap((adjustment, index) =>
    adjustment.reason.trim() === '' ? [{ field: `${field}[${index}].reason`, message: `${what} has no reason. Say what it is for.` }] : [],
  );
}
