import { jugs as drawJugs } from '#libs/charts';
import { shownProtection } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { BenchContext } from '../bench-context.ts';
import { type TabView, benchTabs } from '../bench-tabs.ts';
import { drawn, type DrawnView } from '../drawn.ts';
import type { ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import type { FieldGroup } from '../form/field-group.ts';
import { type BenchFormView, presentForm } from '../form/present-form.ts';
import { type CautionView, cautionsFor, type GroundsView, THE_MANUAL_RULES } from '../grounds-view.ts';
import { inUnits } from '../units/in-units.ts';
import { measureOf, plainFigure, saidFigure } from '../units/measure.ts';
import { presentUnits, type UnitsView } from '../units/present-units.ts';
import { resultFigure, type ResultFigure, textFigure } from '../result-figure.ts';
import { presentGrounds } from './present-grounds.ts';
import { pouringLines } from './pouring-lines.ts';
import { presentPour, type PourView } from './present-pour.ts';
import { exampleRange, presentRange, type RangeView } from './present-range.ts';
import type { RefillAnswer } from './reckon-refill.ts';

export interface AnswerView {
  /** Read out when it changes. */
  readonly status: string;
  readonly pours: readonly PourView[];
  readonly order: readonly string[];
  readonly figures: readonly ResultFigure[];
  readonly example?: DrawnView;
  readonly asks?: string;
  readonly refusal?: { readonly message: string; readonly act?: { readonly href: string; readonly label: string } };
  readonly range: RangeView;
  readonly warnings: readonly string[];
  readonly grounds?: GroundsView;
  /** The drawings' figures as tables. */
  readonly tables: readonly DrawnView['table'][];
  readonly cautions: readonly CautionView[];
}

export interface RefillView {
  readonly title: string;
  readonly head: { readonly title: string; readonly lead: string; readonly rest: string };
  readonly tabs: readonly TabView[];
  readonly form: BenchFormView;
  readonly units: UnitsView;
  readonly answer: AnswerView;
  readonly manual: string;
  readonly scripts: readonly string[];
}

export interface Refill {
  readonly groups: readonly FieldGroup[];
  readonly form: ReadForm;
  readonly answer: RefillAnswer;
  readonly context: BenchContext;
  /** The page's own address, without and with what was typed. */
  readonly address: { readonly path: string; readonly query: string };
}

/** Opening and drying belong to the job's card; at the bench it is the liquid and the first run. */
const CAUTIONS = cautionsFor(['opening', 'handling', 'spill', 'waste', 'running']);

/** What keeps the answer back stands beside its field. */
function withRefusal({ form, answer, context }: Refill): ReadForm {
  if (answer.kind !== 'refused' || form.errors[answer.field] !== undefined) return form;
  return { ...form, errors: { ...form.errors, [answer.field]: inUnits(answer.message, context.units) } };
}

const labelOf = (groups: readonly FieldGroup[], name: string): string =>
  groups.flatMap(({ fields }) => fields).find((field) => field.name === name)?.label ?? name;

/** The same page with another figure in one field. */
export function withFigure(address: Refill['address'], name: string, text: string): string {
  const query = new URLSearchParams(address.query);
  query.set(name, text);
  query.delete('was');
  return `${address.path}?${query.toString()}`;
}

function held({ answer, groups, form, context, address }: Refill): AnswerView {
  const { units, workshop } = context;
  const size = { jugMl: workshop.jugMl, markMl: workshop.jugMarkMl };
  const common = {
    pours: [],
    order: [],
    figures: [],
    tables: [],
    warnings: [],
    cautions: CAUTIONS,
    range: exampleRange(context),
    example: drawn('jugs-example', { wide: 320, narrow: 280 }, (options) =>
      drawJugs({ ...size, jugs: [] }, { ...options, ground: 'sheet' }),
    ),
  };
  if (answer.kind !== 'refused') {
    const field = answer.kind === 'asks' ? answer.field : '';
    const asks = form.isAsked
      ? `Still to be said: ${labelOf(groups, field)}.`
      : 'Type what the system holds; the rest is assumed until you say otherwise.';
    return { ...common, status: asks, asks };
  }
  const message = inUnits(answer.message, units);
  const { requiredOutL } = answer;
  if (requiredOutL === undefined) return { ...common, status: message, refusal: { message } };
  const { shown, unit } = measureOf('volume', units);
  const text = plainFigure(Math.ceil(shown(requiredOutL) * 100 - 1e-6) / 100, 2);
  const act = { href: withFigure(address, 'out', text), label: `Reckon with ${text} ${unit} out` };
  return { ...common, status: message, refusal: { message, act } };
}

function resultFigures(answer: Extract<RefillAnswer, { kind: 'ready' }>, { units }: BenchContext): readonly ResultFigure[] {
  const { recipe } = answer;
  const poured = recipe.roundedJugs ?? recipe;
  const freezes = formatFigure(shownProtection(poured.resultFreezingPointC, { unit: units.temperature }), 0);
  const asked = `asked: ${saidFigure(recipe.targetFreezingPointC, 'temperature', units)}`;
  const product = poured.resultProductPercent;
  return [
    resultFigure(poured.resultVolumePercent, 'percent', { units, word: 'of pure glycol', said: 'by volume' }),
    ...(product === null ? [] : [resultFigure(product, 'percent', { units, word: 'of product', said: '50: half and half' })]),
    textFigure(freezes, units.temperature, { word: 'safe to', said: asked }),
    resultFigure(recipe.residualL, 'volume', { units, word: 'stays in', said: 'of the old coolant' }),
    resultFigure(recipe.spaceL, 'volume', { units, word: 'to fill', said: 'drained and missing' }),
  ];
}

function answerView(refill: Refill): AnswerView {
  const { answer, form, context } = refill;
  if (answer.kind !== 'ready') return held(refill);
  const { units, workshop } = context;
  const { jug = workshop.jugMl / 1000, mark = workshop.jugMarkMl } = form.figures;
  const pours = presentPour(answer, { jugMl: jug * 1000, markMl: mark }, units);
  const range = presentRange(answer, form, context);
  return {
    status: `Pour ${pours.map(({ amount, unit, what }) => `${amount} ${unit} of ${what}`).join(' and ')}. ${range.title}.`,
    pours,
    order: pouringLines(answer.recipe, { productName: answer.productName, units, keptL: answer.keptL }),
    figures: resultFigures(answer, context),
    range,
    tables: [...pours.map(({ drawing }) => drawing.table), range.drawing.table],
    warnings: answer.warnings.map(({ text }) => inUnits(text, units)),
    grounds: presentGrounds(answer, glycolOf(form), units),
    cautions: CAUTIONS,
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
    form: presentForm(form, { groups: refill.groups, units: context.units, action: address.path }),
    units: presentUnits(context.units, here),
    answer: answerView(refill),
    manual: THE_MANUAL_RULES,
    scripts: ['coolant.js'],
  };
}
