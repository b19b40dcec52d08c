import { type Evidence } from '../template/evidence.ts';
import { fieldsOf, numberIn, oneOf } from '../words/fields.ts';
import { type Read, refused, understood } from '../words/read.ts';
import { type EvidenceValue } from './evidence-value.ts';

const DOUBT = { low: 0, high: 50, words: 'The ± of the instrument, in K.' };

/** A temperature with its instrument, place and the signs of pressure. A stated U never beats the instrument's own. */
export function readColdReading(value: unknown, spec: Extract<Evidence, { kind: 'cold-reading' }>): Read<EvidenceValue> {
  const fields = fieldsOf(value);
  const tempC = numberIn(fields['tempC'], spec.range, 'Temperature');
  if (!tempC.ok) return tempC;
  const instrument = spec.instruments.find((one) => one.key === fields['instrument']);
  if (!instrument) return refused('Say which instrument it was measured with.');
  const place = spec.places.find((one) => one.key === fields['place']);
  if (!place) return refused('Say where it was measured.');
  const stated = numberIn(fields['expandedUncertaintyC'] ?? instrument.expandedU, DOUBT, 'The ± of the instrument');
  if (!stated.ok) return stated;
  const pressure = oneOf(fields['pressure'], ['none', 'some', 'unsure'] as const, 'Pressure');
  if (!pressure.ok) return pressure;
  const hose = oneOf(fields['hose'] ?? 'not-reached', ['soft', 'hard', 'not-reached'] as const, 'Hose');
  if (!hose.ok) return hose;
  const reading = {
    tempC: tempC.value,
    expandedUncertaintyC: Math.max(stated.value, instrument.expandedU),
    method: instrument.method,
    onBareMetal: place.bareMetal,
    pressure: pressure.value,
    hose: hose.value,
  };
  return understood({ kind: 'cold-reading', reading, instrument: instrument.key, place: place.key });
}
