import { type Evidence } from '../template/evidence.ts';
import { fieldsOf, numberIn } from '../words/fields.ts';
import { type Read, refused, understood } from '../words/read.ts';
import { type EvidenceValue } from './evidence-value.ts';

/** One of the step's answers, with the figures that answer asks for. */
export function readChoice(value: unknown, spec: Extract<Evidence, { kind: 'choice' }>): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const option = spec.options.find((one) => one.key === fields['choice']);
  if (!option) return refused(`Choose one: ${spec.options.map((one) => one.words).join('; ')}.`);
  const asked: Record<string, number> = {};
  for (const ask of option.asks ?? []) {
    const answer = numberIn(fields[ask.key], ask.range, ask.words);
    if (!answer.ok) return answer;
    asked[ask.key] = answer.value;
  }
  return understood({ kind: 'choice', choice: option.key, asked });
}
