import { type CoolantTechnology, mixingAdvice, type MixingAdvice, serviceLife, TECHNOLOGIES } from '#libs/coolant';
import { plainDate } from '../../../web/dates.ts';
import type { BenchField, ReadForm } from '../form/bench-field.ts';
import { type FieldGroup } from '../form/field-group.ts';
import { textFigure } from '../result-figure.ts';
import { TECHNOLOGY_OPTIONS, technologyOf } from './technology-fields.ts';
import { asks, outcomeOf, type Tool, type ToolAnswer, type ToolOutcome } from './tool.ts';

const KM = { kind: 'figure', quantity: 'kilometres', least: 0, most: 5_000_000, holds: 'An odometer shows', isOptional: true } as const;

const MIXING: readonly BenchField[] = [
  {
    kind: 'choice',
    name: 'present',
    label: 'In the car',
    options: [{ value: 'unknown', label: 'Not known' }, ...TECHNOLOGY_OPTIONS],
    standing: { value: 'unknown', how: 'assumed', said: 'Colour tells nothing.' },
  },
  {
    kind: 'choice',
    name: 'added',
    label: 'To be poured',
    options: TECHNOLOGY_OPTIONS,
    standing: { value: 'organic', how: 'assumed', said: 'The label says which.' },
  },
  {
    kind: 'choice',
    name: 'approved',
    label: 'The vehicle maker approves it',
    options: [
      { value: 'unknown', label: 'Not looked up' },
      { value: 'yes', label: 'Yes' },
      { value: 'no', label: 'No' },
    ],
    standing: { value: 'unknown', how: 'assumed', said: 'The approval is what counts.' },
  },
  {
    kind: 'choice',
    name: 'flushed',
    label: 'The system is flushed first',
    options: [
      { value: 'no', label: 'No' },
      { value: 'yes', label: 'Yes' },
    ],
    standing: { value: 'no', how: 'assumed', said: 'Assumed.' },
  },
];

const LIFE: readonly BenchField[] = [
  { kind: 'day', name: 'filled', label: 'Filled on', isOptional: true, hint: 'Empty: its life is not reckoned.' },
  { ...KM, name: 'filledKm', label: 'Odometer then' },
  { ...KM, name: 'nowKm', label: 'Odometer now' },
  {
    kind: 'figure',
    quantity: 'months',
    name: 'months',
    label: 'Life by label or schedule',
    least: 1,
    most: 240,
    holds: 'A coolant is said to last',
    isOptional: true,
    hint: 'Beats the usual figure.',
  },
];

const groups: readonly FieldGroup[] = [
  { title: 'Mixing', isFolded: false, fields: MIXING },
  { title: 'Service life', isFolded: false, fields: LIFE },
];

function adviceAnswer(advice: MixingAdvice, form: ReadForm): ToolAnswer {
  const added = TECHNOLOGIES[technologyOf(form.choices['added']) ?? 'organic'];
  return {
    headline: advice.text,
    figures: [textFigure(String(advice.serviceYears), 'years', { word: 'at most', said: 'the shorter life counts' })],
    lines: [`${added.name}: ${added.inhibitors}.`],
    sure: 'Trade convention: no standard defines these classes. The vehicle maker’s approval is what counts, never class or colour.',
    assumptions: advice.assumptions,
    warnings: advice.warnings,
    sources: advice.sources,
  };
}

/** Mixed, both last as long as the shorter. */
function shorterLived(form: ReadForm, advice: MixingAdvice): CoolantTechnology {
  const added = technologyOf(form.choices['added']) ?? 'organic';
  const present = technologyOf(form.choices['present']) ?? 'inorganic';
  const isMixed = advice.warnings.some(({ code }) => code === 'mixing-technologies');
  return isMixed && TECHNOLOGIES[present].serviceYears < TECHNOLOGIES[added].serviceYears ? present : added;
}

function withLife(
  answer: ToolAnswer,
  form: ReadForm,
  { technology, today }: { technology: CoolantTechnology; today: string },
): ToolOutcome {
  const filledOn = form.days['filled'];
  if (filledOn === undefined) return { kind: 'ready', answer };
  const { filledKm, nowKm, months } = form.figures;
  const life = serviceLife({ technology, filledOn, filledAtKm: filledKm, odometerKm: nowKm, statedMonths: months, today });
  const fields = { filledOn: 'filled', filledAtKm: 'filledKm', odometerKm: 'nowKm', statedMonths: 'months' };
  return outcomeOf(life, fields, ({ dueOn, dueAtKm, state, assumptions, warnings, sources }) => ({
    ...answer,
    figures: [
      ...answer.figures,
      textFigure(plainDate(new Date(`${dueOn}T00:00:00Z`)), '', {
        word: 'change by',
        said: state === 'due' ? 'due now' : 'or by distance, whichever is first',
      }),
      ...(dueAtKm === null ? [] : [textFigure(dueAtKm.toLocaleString('en-GB', { maximumFractionDigits: 0 }), 'km', { word: 'or at' })]),
    ],
    assumptions: [...answer.assumptions, ...assumptions],
    warnings: [...answer.warnings, ...warnings],
    sources: [...new Set([...answer.sources, ...sources])],
  }));
}

/** Whether a coolant may go in with what is there, and when it is due again. */
export const TECHNOLOGY: Tool = {
  key: 'technology',
  title: 'Technology and life',
  lead: 'Whether it may go in, and how long it lasts.',
  rest: 'Colour is no standard: the dye is the choice of its maker.',
  groups: () => groups,
  cautions: ['handling'],
  reckon: (form, { today }) => {
    const added = technologyOf(form.choices['added']);
    if (!added) return asks('added');
    const approved = form.choices['approved'];
    const advice = mixingAdvice({
      present: technologyOf(form.choices['present']),
      added,
      isApprovedByVehicleMaker: approved === 'unknown' ? undefined : approved === 'yes',
      isFlushed: form.choices['flushed'] === 'yes',
    });
    return withLife(adviceAnswer(advice, form), form, { technology: shorterLived(form, advice), today });
  },
};
