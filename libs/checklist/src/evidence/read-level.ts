import { type Range } from '../template/evidence.ts';
import { fieldsOf, numberIn } from '../words/fields.ts';
import { type Read, understood } from '../words/read.ts';
import { type EvidenceValue } from './evidence-value.ts';
import { readFillAmounts } from './read-fill.ts';

/** Level against the cold mark in mL (below it positive), or an empty tank; with what was poured to bring it up. */
export function readLevel(value: unknown, range: Range): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const amounts = readFillAmounts(value);
  if (!amounts.ok) return amounts;
  if (fields['empty'] === true) return understood({ kind: 'level', belowMarkMl: null, amounts: amounts.value });
  const below = numberIn(fields['belowMarkMl'], range, 'Level below the cold mark');
  return below.ok ? understood({ kind: 'level', belowMarkMl: below.value, amounts: amounts.value }) : below;
}
