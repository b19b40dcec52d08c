import { formatFigure } from '#libs/units';
import { type FormState, rowError } from '../../../platform/pages/form-state.ts';
import { dateText } from '../../../web/dates.ts';
import { type FieldView, formFields } from '../../../web/form-field.ts';
import { urls } from '../../../web/urls.ts';
import type { BenchContext } from '../bench-context.ts';
import type { Address } from '../address-of.ts';
import { withFigure } from '../refill/with-figure.ts';
import { TECHNOLOGY_OPTIONS } from '../tools/technology-fields.ts';
import { saidFigure } from '../units/measure.ts';
import { unitMark } from '../units/unit-mark.ts';
import { FACT_KEYS, FACT_WORDS, type FactKey } from './fact-keys.ts';
import type { StatedFact } from '../../customers/vehicle-facts.service.ts';

interface FactRow {
  readonly id: string;
  readonly value: string;
  readonly words: string;
  readonly source: string;
  readonly who: string;
  readonly differs: boolean;
  readonly withdraw: string;
  readonly wrong: string | undefined;
  readonly use?: { readonly href: string; readonly label: string };
}

export interface MemoryView {
  readonly groups: readonly { readonly word: string; readonly isDisputed: boolean; readonly rows: readonly FactRow[] }[];
  readonly isEmpty: boolean;
  readonly fields: readonly { readonly place: string; readonly field: FieldView }[];
  readonly unitMark: string;
  readonly errors: FormState['summary'];
  readonly isOpen: boolean;
}

function valueOf({ key, figure, words }: StatedFact<FactKey>, context: BenchContext): string {
  const { units } = context;
  switch (key) {
    case 'capacity':
      return saidFigure(figure ?? 0, 'volume', units);
    case 'cap':
      return saidFigure(figure ?? 0, 'pressure', units);
    case 'freezing-point':
      return saidFigure(figure ?? 0, 'temperature', units);
    case 'strength':
      return `${formatFigure(figure ?? 0, 1)} %`;
    case 'technology':
      return TECHNOLOGY_OPTIONS.find(({ value }) => value === words)?.label ?? words;
    case 'glycol':
    case 'coolant-changed':
      return words;
  }
}

/** Readings come after one another; only what is fixed in the car can be disputed. */
const FIXED = new Set<FactKey>(['capacity', 'cap', 'glycol', 'technology']);
const SAYS_ITSELF = new Set<FactKey>(['glycol', 'technology', 'coolant-changed']);

interface MemoryOptions {
  readonly jobId: string;
  readonly context: BenchContext;
  readonly address: Address;
  readonly forms: { readonly fact: FormState; readonly withdraw: FormState };
}

function useOf(fact: StatedFact<FactKey>, context: BenchContext, address: Address): FactRow['use'] {
  const field = fact.key === 'capacity' ? 'holds' : fact.key === 'cap' ? 'cap' : undefined;
  if (field === undefined || fact.figure === null) return undefined;
  const quantity = field === 'holds' ? 'volume' : 'pressure';
  const href = withFigure(address, { name: field, value: fact.figure, quantity, units: context.units });
  return { href, label: 'Reckon with it' };
}

function groupOf(
  key: FactKey,
  facts: readonly StatedFact<FactKey>[],
  { context, address, forms, jobId }: MemoryOptions,
): MemoryView['groups'][number] {
  const own = facts.filter((fact) => fact.key === key);
  const newest = own[0] && valueOf(own[0], context);
  const rows = own.map((fact): FactRow => {
    const value = valueOf(fact, context);
    const differs = FIXED.has(key) && value !== newest;
    const use = differs ? useOf(fact, context, address) : undefined;
    return {
      id: fact.id,
      value,
      words: SAYS_ITSELF.has(key) ? '' : fact.words,
      source: fact.source,
      who: `${fact.enteredBy}, ${dateText(fact.enteredAt, context.workshop.timeZone)}`,
      differs,
      withdraw: urls.withdrawCoolantFact(jobId, fact.id),
      wrong: rowError(forms.withdraw, { action: urls.withdrawCoolantFact(jobId, fact.id), field: 'why' }),
      ...(use ? { use } : {}),
    };
  });
  return { word: FACT_WORDS[key], isDisputed: rows.some(({ differs }) => differs), rows };
}

function fields(form: FormState, { units }: BenchContext): MemoryView['fields'] {
  const built = formFields(form, [
    { name: 'key', label: 'What', value: 'capacity', options: FACT_KEYS.map((value) => ({ value, label: FACT_WORDS[value] })) },
    {
      name: 'figure',
      label: 'Figure',
      maxlength: 20,
      autocomplete: 'off',
      hint: `In ${units.volume}, ${units.pressure}, ${units.temperature} or %, as it fits.`,
    },
    {
      name: 'capacityKind',
      label: 'That figure is',
      value: 'dry fill',
      options: [
        { value: 'dry fill', label: 'The dry system' },
        { value: 'service refill', label: 'The usual refill' },
      ],
    },
    {
      name: 'factGlycol',
      label: 'Glycol',
      value: 'ethylene',
      options: [
        { value: 'ethylene', label: 'Ethylene glycol' },
        { value: 'propylene', label: 'Propylene glycol' },
      ],
    },
    { name: 'technology', label: 'Technology', value: 'organic', options: TECHNOLOGY_OPTIONS },
    { name: 'changedOn', label: 'Changed on', type: 'date' },
    { name: 'source', label: 'Where from', maxlength: 200, hint: 'Handbook and page, label, own reading.' },
  ]);
  const places: Readonly<Record<string, string>> = {
    figure: 'when-fact-figure',
    capacityKind: 'when-fact-capacity',
    factGlycol: 'when-fact-glycol',
    technology: 'when-fact-technology',
    changedOn: 'when-fact-day',
  };
  return Object.values(built).map((field) => ({ place: places[field.name] ?? '', field }));
}

/** The car's memory: what was stated, by whom, from where; differing statements side by side. */
export function presentMemory(facts: readonly StatedFact<FactKey>[], options: MemoryOptions): MemoryView {
  const form = options.forms.fact;
  const groups = FACT_KEYS.map((key) => groupOf(key, facts, options)).filter(({ rows }) => rows.length > 0);
  return {
    groups,
    isEmpty: groups.length === 0,
    fields: fields(form, options.context),
    unitMark: unitMark(options.context.units),
    errors: form.summary,
    isOpen: form.summary.length > 0 || groups.length === 0,
  };
}
