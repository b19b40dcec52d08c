import { jugs as drawJugs } from '#libs/charts';
import { urls } from '../../../web/urls.ts';
import type { Address } from '../address-of.ts';
import type { BenchContext } from '../bench-context.ts';
import { type TabView, benchTabs } from '../bench-tabs.ts';
import { drawn, type DrawnView } from '../drawn.ts';
import type { ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import type { FieldGroup } from '../form/field-group.ts';
import { type BenchFormView, presentForm, summaryOf } from '../form/present-form.ts';
import { type CautionView, cautionsFor, type GroundsView, THE_MANUAL_RULES } from '../grounds-view.ts';
import type { BenchJob } from '../job/bench-jobs.repository.ts';
import { inUnits } from '../units/in-units.ts';
import { measureOf, plainFigure } from '../units/measure.ts';
import { presentUnits, type UnitsView } from '../units/present-units.ts';
import { type ResultFigure } from '../result-figure.ts';
import { jugSize, liquidsToPour } from './liquids.ts';
import { type WarningView, warningViews } from '../warning-views.ts';
import { presentGrounds } from './present-grounds.ts';
import { pouringLines } from './pouring-lines.ts';
import { presentPour, type PourView } from './present-pour.ts';
import { exampleRange, presentRange, type RangeView } from './present-range.ts';
import type { RefillAnswer } from './reckon-refill.ts';
import { refillFigures } from './refill-figures.ts';
import { withFigure } from './with-figure.ts';

interface AnswerView {
  /** Read out when it changes. */
  readonly status: string;
  readonly pours: readonly PourView[];
  readonly order: readonly string[];
  readonly figures: readonly ResultFigure[];
  readonly example?: DrawnView;
  readonly asks?: string;
  readonly refusal?: { readonly message: string; readonly act?: { readonly href: string; readonly label: string } };
  readonly range: RangeView;
  readonly warnings: readonly WarningView[];
  readonly grounds?: GroundsView;
  /** The drawings' figures as tables. */
  readonly tables: readonly DrawnView['table'][];
  readonly cautions: readonly CautionView[];
}

export interface RefillView {
  readonly title: string;
  readonly head: {
    readonly title: string;
    readonly lead: string;
    readonly rest: string;
    readonly actions?: readonly { readonly href: string; readonly label: string }[];
    readonly keyTag?: { readonly key: string; readonly href: string };
  };
  readonly tabs: readonly TabView[];
  readonly form: BenchFormView;
  readonly units: UnitsView;
  readonly answer: AnswerView;
  readonly cars: readonly { readonly key: string; readonly href: string; readonly car: string }[];
  readonly manual: string;
  readonly scripts: readonly string[];
}

export interface Refill {
  readonly groups: readonly FieldGroup[];
  readonly form: ReadForm;
  readonly answer: RefillAnswer;
  readonly context: BenchContext;
  /** The page's own address, without and with what was typed. */
  readonly address: Address;
  readonly carsHere?: readonly BenchJob[];
}

const MOMENTS = ['opening', 'handling', 'spill', 'waste', 'running'] as const;

/** What keeps the answer back stands beside its field. */
function withRefusal({ form, answer, context }: Refill): ReadForm {
  if (answer.kind !== 'refused' || form.errors[answer.field] !== undefined) return form;
  return { ...form, errors: { ...form.errors, [answer.field]: inUnits(answer.message, context.units) } };
}

const labelOf = (groups: readonly FieldGroup[], name: string): string =>
  groups.flatMap(({ fields }) => fields).find((field) => field.name === name)?.label ?? name;

function held({ answer, groups, form, context, address }: Refill): AnswerView {
  const { units, workshop } = context;
  const size = { jugMl: workshop.jugMl, markMl: workshop.jugMarkMl };
  const common = {
    pours: [],
    order: [],
    figures: [],
    tables: [],
    warnings: [],
    cautions: cautionsFor(MOMENTS, units),
    range: exampleRange(context),
    example: drawn('jugs-example', { wide: 320, narrow: 280 }, (options) =>
      drawJugs({ ...size, jugs: [] }, { ...options, ground: 'sheet' }),
    ),
  };
  if (answer.kind !== 'refused') {
    const field = answer.kind === 'asks' ? answer.field : '';
    const isBeginning = !form.isAsked && field === 'holds';
    const asks = isBeginning
      ? 'Type what the system holds; the rest is assumed until you say otherwise.'
      : `Still to be said: ${labelOf(groups, field)}.`;
    return { ...common, status: asks, asks };
  }
  const message = inUnits(answer.message, units);
  const { requiredOutL } = answer;
  if (requiredOutL === undefined) return { ...common, status: message, refusal: { message } };
  const measure = measureOf('volume', units);
  const out = `${plainFigure(Math.ceil(measure.shown(requiredOutL) * 100 - 1e-6) / 100, 2)} ${measure.unit}`;
  const href = withFigure(address, { name: 'out', value: requiredOutL, quantity: 'volume', units });
  const act = { href, label: `Reckon with ${out} out` };
  return { ...common, status: message, refusal: { message, act } };
}

function answerView(refill: Refill): AnswerView {
  const { answer, form, context } = refill;
  if (answer.kind !== 'ready') return held(refill);
  const { units } = context;
  const size = jugSize(form, context);
  const pours = liquidsToPour(answer, size).map((liquid) => presentPour(liquid, size, units));
  const range = presentRange(answer, form, context);
  return {
    status: `Pour ${pours.map(({ amount, unit, what }) => `${amount} ${unit} of ${what}`).join(' and ')}. ${range.title}.`,
    pours,
    order: pouringLines(answer.recipe, { productName: answer.productName, units, keptL: answer.keptL }),
    figures: refillFigures(answer, units),
    range,
    tables: [...pours.map(({ drawing }) => drawing.table), range.drawing.table],
    warnings: warningViews(answer.warnings, units),
    grounds: presentGrounds(answer, glycolOf(form), units),
    cautions: cautionsFor(MOMENTS, units),
  };
}

/** The bench's refill page. */
export function presentRefill(refill: Refill): RefillView {
  const { context, address } = refill;
  const form = withRefusal(refill);
  const here = address.query === '' ? address.path : `${address.path}?${address.query}`;
  return {
    title: 'Coolant bench',
    head: {
      title: 'Coolant bench',
      lead: 'A refill with what stays in the block counted.',
      rest: 'What was missing on arrival counts as much as what was drained. Colour is no standard, so none is drawn.',
    },
    tabs: benchTabs(''),
    form: { ...presentForm(form, { groups: refill.groups, units: context.units, action: address.path }), errors: summaryOf(refill.form) },
    units: presentUnits(context.units, here),
    answer: answerView(refill),
    cars: (refill.carsHere ?? []).map(({ id, number, keyTag, vehicle }) => ({
      key: keyTag === null ? `job ${number}` : String(keyTag),
      href: urls.jobCoolant(id),
      car: `${vehicle.make} ${vehicle.model}, ${vehicle.registration}`,
    })),
    manual: THE_MANUAL_RULES,
    scripts: ['coolant.js'],
  };
}
