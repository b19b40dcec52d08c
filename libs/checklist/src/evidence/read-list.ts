import { fieldsOf, textIn } from '../words/fields.ts';
import { type Read, refused, understood } from '../words/read.ts';
import { type EvidenceValue, type LeftOff } from './evidence-value.ts';

const MOST_ITEMS = 200;

/** Names of things taken off, or, when they go back on, only those left off and why. An empty list says 'none'. */
export function readList(value: unknown): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const [rawItems, rawLeftOff] = [fields['items'] ?? [], fields['leftOff'] ?? []];
  if (!Array.isArray(rawItems) || !Array.isArray(rawLeftOff)) return refused('The list could not be read: enter it again.');
  if (rawItems.length > MOST_ITEMS || rawLeftOff.length > MOST_ITEMS) return refused(`The list is longer than ${MOST_ITEMS}: shorten it.`);
  const items: string[] = [];
  for (const raw of rawItems as readonly unknown[]) {
    const item = textIn(raw, 'A name on the list');
    if (!item.ok) return item;
    items.push(item.value);
  }
  const leftOff: LeftOff[] = [];
  for (const raw of rawLeftOff as readonly unknown[]) {
    const item = textIn(fieldsOf(raw)['item'], 'The name of what is left off');
    if (!item.ok) return item;
    const why = textIn(fieldsOf(raw)['why'], `Why '${item.value}' is left off`);
    if (!why.ok) return why;
    leftOff.push({ item: item.value, why: why.value });
  }
  return understood({ kind: 'list', items, leftOff });
}
