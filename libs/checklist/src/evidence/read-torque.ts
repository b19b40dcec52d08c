import { type Read, refused, understood } from '../words/read.ts';
import { countIn, fieldsOf, numberIn, oneOf, textIn, textOrNull } from '../words/fields.ts';
import { type EvidenceValue } from './evidence-value.ts';

/** Anything a hand wrench does on a cooling system lies far inside; the doubtful entries are warned of, not refused. */
const SETTABLE = { low: 0.1, high: 1000, words: 'Check the figure and the unit.' };

/** One entry: set at, unit as printed, n of n, in sequence, and where it is printed. */
export function readTorque(value: unknown): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const setAt = numberIn(fields['setAt'], SETTABLE, 'What the wrench was set at');
  if (!setAt.ok) return setAt;
  const unit = oneOf(fields['unit'], ['Nm', 'lbf·ft', 'lbf·in'] as const, 'Unit as printed');
  if (!unit.ok) return unit;
  const tightened = countIn(fields['tightened'], 0, 'How many were tightened');
  if (!tightened.ok) return tightened;
  const of = countIn(fields['of'], 1, 'Of how many');
  if (!of.ok) return of;
  if (tightened.value > of.value) return refused(`${tightened.value} of ${of.value} can't be: correct one of the two.`);
  const document = textIn(fields['document'], "The manual's document");
  if (!document.ok) return document;
  const page = textIn(fields['page'], "The manual's page");
  if (!page.ok) return page;
  const entry = {
    setAt: setAt.value,
    unit: unit.value,
    tightened: tightened.value,
    of: of.value,
    inSequence: fields['inSequence'] === true,
    document: document.value,
    page: page.value,
    thread: textOrNull(fields['thread']),
    then: textOrNull(fields['then']),
  };
  return understood({ kind: 'torque', entry });
}
