import { type Evidence, type EvidenceKind, readEvidence } from '#libs/checklist';
import { PRESSURE_SIGNS, type PressureSign } from '../card-page/cold-verdict.ts';
import { leftOffFrom, linesFrom } from './list-from-form.ts';
import type { TypedForm } from './typed-form.ts';

/** Where a refusal of the whole evidence is shown. */
export const MAIN_FIELD: Readonly<Record<EvidenceKind, string>> = {
  tick: '',
  timer: '',
  reading: 'value',
  'cold-reading': 'tempC',
  litres: 'litres',
  choice: 'choice',
  list: 'items',
  count: 'counted',
  variant: 'variant',
  torque: 'setAt',
  jugs: 'productMl',
  level: 'belowMarkMl',
};

/**
 * The evidence that a form gives, as the value of an action. What can't be read, or what the checklist refuses, is left
 * beside its field in `form.errors`.
 */
export function evidenceFromForm(spec: Evidence, form: TypedForm): unknown {
  const value = valueOf(spec, form);
  if (form.errors.length > 0) return value;
  const read = readEvidence(spec, value);
  if (!read.ok) form.wrong(fieldAtFault(spec, value), read.why);
  return value;
}

function valueOf(spec: Evidence, form: TypedForm): unknown {
  switch (spec.kind) {
    case 'tick':
    case 'timer':
      return null;
    case 'reading':
      return readingFrom(spec, form);
    case 'cold-reading':
      return coldReadingFrom(spec, form);
    case 'litres':
      return { litres: form.neededFigure('litres', 'Litres'), ...aboutFrom(form) };
    case 'choice':
      return choiceFrom(spec, form);
    case 'list':
      return spec.returns === undefined ? linesFrom(form) : leftOffFrom(form);
    case 'count':
      return { counted: form.neededFigure('counted', 'How many came back'), of: form.neededFigure('of', 'How many went out') };
    case 'variant':
      return { variant: form.text('variant'), basis: form.text('basis') };
    case 'torque':
      return torqueFrom(form);
    case 'jugs':
      return { ...poured(form), ...aboutFrom(form) };
    case 'level':
      return levelFrom(form);
  }
}

const aboutFrom = (form: TypedForm): { about?: true } => (form.isTicked('about') ? { about: true } : {});

/** On a scale that ends at zero, such as freezing points, the sign goes without saying. */
function readingFrom({ range, instruments }: Extract<Evidence, { kind: 'reading' }>, form: TypedForm): unknown {
  const figure = form.neededFigure('value', 'The reading');
  const value = figure !== undefined && range.high <= 0 ? -Math.abs(figure) : figure;
  if (instruments.length === 0) return { value };
  const keys = instruments.map(({ key }) => key);
  return { value, instrument: form.oneOf('instrument', keys, 'Say which instrument it was read with.') };
}

function coldReadingFrom({ instruments, places }: Extract<Evidence, { kind: 'cold-reading' }>, form: TypedForm): unknown {
  const sign = form.oneOf(
    'signs',
    Object.keys(PRESSURE_SIGNS) as PressureSign[],
    'Say whether there is pressure: squeeze the hose, cap stays on.',
  );
  return {
    tempC: form.neededFigure('tempC', 'Temperature'),
    instrument: form.oneOf(
      'instrument',
      instruments.map(({ key }) => key),
      'Say which instrument it was measured with.',
    ),
    place: form.oneOf(
      'place',
      places.map(({ key }) => key),
      'Say where it was measured.',
    ),
    ...(sign === undefined ? {} : PRESSURE_SIGNS[sign]),
  };
}

/** The field of a figure that one answer asks for. */
export const askField = (option: string, ask: string): string => `${option}.${ask}`;

function choiceFrom({ options }: Extract<Evidence, { kind: 'choice' }>, form: TypedForm): unknown {
  const keys = options.map(({ key }) => key);
  const choice = form.oneOf('choice', keys, 'Choose one of the answers.');
  const asks = options.find(({ key }) => key === choice)?.asks ?? [];
  const asked = asks.map(({ key, words }) => [key, form.neededFigure(askField(choice ?? '', key), words)] as const);
  return { choice, ...Object.fromEntries(asked) };
}

function torqueFrom(form: TypedForm): unknown {
  return {
    setAt: form.neededFigure('setAt', 'What the wrench was set at'),
    unit: form.oneOf('unit', ['Nm', 'lbf·ft', 'lbf·in'] as const, 'Choose the unit as the manual prints it.'),
    tightened: form.neededFigure('tightened', 'How many were tightened'),
    of: form.neededFigure('of', 'Of how many'),
    inSequence: form.isTicked('inSequence'),
    document: form.needed('document', 'Name the document the value is printed in.'),
    page: form.needed('page', 'Give the page the value is printed on.'),
    thread: form.text('thread') || null,
    then: form.text('then') || null,
  };
}

function poured(form: TypedForm): { productMl: number; waterMl: number; keptMl: number } {
  return { productMl: form.figure('productMl') ?? 0, waterMl: form.figure('waterMl') ?? 0, keptMl: form.figure('keptMl') ?? 0 };
}

/** Keypads have no minus: which side of the mark it stands is an answer of its own. */
function levelFrom(form: TypedForm): unknown {
  const side = form.oneOf('side', ['below', 'at', 'above', 'empty'] as const, 'Say how it stands against the cold mark.');
  const amounts = poured(form);
  if (side === 'empty') return { empty: true, ...amounts };
  if (side === 'at') return { belowMarkMl: 0, ...amounts };
  const figure = form.neededFigure('belowMarkMl', 'How far from the cold mark');
  return { belowMarkMl: figure !== undefined && side === 'above' ? -Math.abs(figure) : figure, ...amounts };
}

function fieldAtFault(spec: Evidence, value: unknown): string {
  const fields = (value ?? {}) as Readonly<Record<string, unknown>>;
  if (spec.kind === 'choice') {
    const option = spec.options.find(({ key }) => key === fields['choice']);
    const ask = option?.asks?.find(({ key, range }) => !isInside(fields[key], range));
    return option && ask ? askField(option.key, ask.key) : 'choice';
  }
  if (spec.kind === 'torque') return torqueFault(fields);
  if (spec.kind === 'count') return isInside(fields['of'], { low: 0, high: 9999 }) && Number.isInteger(fields['of']) ? 'counted' : 'of';
  return MAIN_FIELD[spec.kind];
}

function torqueFault({ setAt, tightened, of }: Readonly<Record<string, unknown>>): string {
  if (!isInside(setAt, { low: 0.1, high: 1000 })) return 'setAt';
  return Number.isInteger(tightened) && isInside(tightened, { low: 0, high: 9999 }) && !Number.isInteger(of) ? 'of' : 'tightened';
}

function isInside(value: unknown, { low, high }: { low: number; high: number }): boolean {
  return typeof value === 'number' && value >= low && value <= high;
}
