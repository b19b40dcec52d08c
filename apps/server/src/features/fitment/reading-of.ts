import { checkReading, type FamilyFeature, type PartFamily } from '#libs/fitment';
import type { NewReading } from './bench.repository.ts';
import type { ReadingDto } from './dto/reading.dto.ts';
import { noFeature, senselessReading, whyUnread, wrongInstrument } from './fitment.errors.ts';

export type ReadValue = Pick<NewReading, 'feature' | 'place' | 'figure' | 'words' | 'couldNotRead' | 'why' | 'instrument' | 'expandedU'>;

/** What was typed as a reading of the family's feature, with the doubt of its instrument. @throws DomainError beside the field */
export function readingOf(family: PartFamily, input: ReadingDto): ReadValue {
  const feature = family.features.find(({ key }) => key === input.feature);
  if (!feature) throw noFeature();
  const { place, why } = input;
  if (input.couldNotRead === 'on') {
    if (why === '') throw whyUnread();
    return { feature: feature.key, place, figure: null, words: null, couldNotRead: true, why, instrument: '', expandedU: null };
  }
  const value = valueOf(feature, input.value);
  const check = checkReading(family.name, feature, { value });
  if (!check.ok) throw senselessReading(check.message);
  const instrument = feature.instruments.find((each) => each.instrument === input.instrument) ?? onlyInstrument(feature);
  return {
    feature: feature.key,
    place,
    figure: typeof value === 'number' ? value : null,
    words: typeof value === 'string' ? value : null,
    couldNotRead: false,
    why,
    instrument: instrument.instrument,
    expandedU: typeof value === 'number' ? instrument.expandedUncertainty : null,
  };
}

function onlyInstrument(feature: FamilyFeature): FamilyFeature['instruments'][number] {
  const [first, second] = feature.instruments;
  if (!first || second) throw wrongInstrument();
  return first;
}

function valueOf(feature: FamilyFeature, typed: string): number | string {
  if (feature.kind === 'category') return typed;
  const text = typed.replace(',', '.');
  return /^-?\d{1,5}(\.\d{1,3})?$/.test(text) ? Number(text) : Number.NaN;
}
