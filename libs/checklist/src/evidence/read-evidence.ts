import { type Evidence } from '../template/evidence.ts';
import { countIn, fieldsOf, numberIn, oneOf, textIn, textOrNull } from '../words/fields.ts';
import { type Read, refused, understood } from '../words/read.ts';
import { type EvidenceValue, VARIANT_BASES } from './evidence-value.ts';
import { readChoice } from './read-choice.ts';
import { readColdReading } from './read-cold-reading.ts';
import { readFill } from './read-fill.ts';
import { readLevel } from './read-level.ts';
import { readList } from './read-list.ts';
import { readTorque } from './read-torque.ts';

/**
 * Reads the free value of an action against what its step asks for.
 *
 * @param spec What the step asks for
 * @param value The action's value: any JSON
 * @returns The evidence, or why it can't be taken, in words
 * @example readEvidence({ kind: 'litres', fact: 'drainedL', range: { low: 0, high: 60, words: '' } }, { litres: 5.2 })
 * // { ok: true, value: { kind: 'litres', litres: 5.2, about: false } }
 */
export function readEvidence(spec: Evidence, value: unknown): Read<EvidenceValue> {
  switch (spec.kind) {
    case 'tick':
    case 'timer':
      return understood({ kind: 'tick' });
    case 'reading':
      return readReading(spec, value);
    case 'cold-reading':
      return readColdReading(value, spec);
    case 'litres': {
      const litres = numberIn(fieldsOf(value)['litres'], spec.range, 'Litres');
      return litres.ok ? understood({ kind: 'litres', litres: litres.value, about: isAbout(value) }) : litres;
    }
    case 'choice':
      return readChoice(value, spec);
    case 'list':
      return readList(value);
    case 'count':
      return readCount(spec, value);
    case 'variant':
      return readVariant(value);
    case 'torque':
      return readTorque(value);
    case 'jugs':
      return readFill(value);
    case 'level':
      return readLevel(value, spec.range);
  }
}

function readReading(spec: Extract<Evidence, { kind: 'reading' }>, value: unknown): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const figure = numberIn(fields['value'], spec.range, 'The reading');
  if (!figure.ok) return figure;
  const instrument = spec.instruments.find((one) => one.key === fields['instrument']) ?? null;
  if (!instrument && spec.instruments.length > 0) return refused('Say which instrument it was read with.');
  return understood({
    kind: 'reading',
    value: figure.value,
    about: isAbout(value),
    instrument: instrument?.key ?? null,
    expandedU: instrument?.expandedU ?? null,
  });
}

function readCount(spec: Extract<Evidence, { kind: 'count' }>, value: unknown): Read<EvidenceValue> {
  const of = countIn(fieldsOf(value)['of'], 0, `How many ${spec.what} went out`);
  if (!of.ok) return of;
  const counted = countIn(fieldsOf(value)['counted'], 0, `How many ${spec.what} came back`);
  return counted.ok ? understood({ kind: 'count', counted: counted.value, of: of.value }) : counted;
}

function readVariant(value: unknown): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const variant = textIn(fields['variant'], 'Which variant');
  if (!variant.ok) return variant;
  const basis = oneOf(fields['basis'], VARIANT_BASES, 'What the choice rests on');
  if (!basis.ok) return basis;
  return understood({ kind: 'variant', variant: variant.value, basis: basis.value, words: textOrNull(fields['words']) });
}

function isAbout(value: unknown): boolean {
  return fieldsOf(value)['about'] === true;
}
