import type { Address } from '../address-of.ts';
import type { BenchContext } from '../bench-context.ts';
import { benchTabs, type TabView } from '../bench-tabs.ts';
import type { ReadForm } from '../form/bench-field.ts';
import { type BenchFormView, presentForm, summaryOf } from '../form/present-form.ts';
import { assumedText, type CautionView, cautionsFor, type GroundsView, THE_MANUAL_RULES } from '../grounds-view.ts';
import type { ResultFigure } from '../result-figure.ts';
import { inUnits } from '../units/in-units.ts';
import { presentUnits, type UnitsView } from '../units/present-units.ts';
import { type WarningView, warningViews } from '../warning-views.ts';
import type { Tool, ToolAnswer, ToolOutcome, ToolTable } from './tool.ts';

export interface ToolView {
  readonly title: string;
  readonly head: { readonly title: string; readonly lead: string; readonly rest: string };
  readonly tabs: readonly TabView[];
  readonly form: BenchFormView;
  readonly units: UnitsView;
  readonly answer: {
    readonly status: string;
    readonly headline?: string;
    readonly asks?: string;
    readonly refusal?: string;
    readonly figures: readonly ResultFigure[];
    readonly lines: readonly string[];
    readonly table?: ToolTable;
    readonly warnings: readonly WarningView[];
    readonly grounds?: GroundsView;
    readonly cautions: readonly CautionView[];
  };
  readonly manual: string;
  readonly scripts: readonly string[];
}

interface Asked {
  readonly tool: Tool;
  readonly form: ReadForm;
  readonly outcome: ToolOutcome;
  readonly context: BenchContext;
  readonly address: Address;
}

function withRefusal({ form, outcome, context }: Asked): ReadForm {
  if (outcome.kind !== 'refused' || form.errors[outcome.field] !== undefined) return form;
  return { ...form, errors: { ...form.errors, [outcome.field]: inUnits(outcome.message, context.units) } };
}

function readyView(answer: ToolAnswer, { tool, context: { units } }: Asked): ToolView['answer'] {
  const own = (text: string): string => inUnits(text, units);
  const headline = own(answer.headline);
  return {
    status: headline,
    headline,
    figures: answer.figures,
    lines: answer.lines.map(own),
    ...(answer.table ? { table: answer.table } : {}),
    warnings: warningViews(answer.warnings, units),
    grounds: { sure: own(answer.sure), assumed: own(assumedText(answer.assumptions, answer.warnings)), sources: answer.sources },
    cautions: cautionsFor(tool.cautions, units),
  };
}

function answerView(asked: Asked): ToolView['answer'] {
  const { outcome, tool, form, context } = asked;
  const common = { figures: [], lines: [], warnings: [], cautions: cautionsFor(tool.cautions, context.units) };
  switch (outcome.kind) {
    case 'ready':
      return readyView(outcome.answer, asked);
    case 'refused': {
      const refusal = inUnits(outcome.message, context.units);
      return { ...common, status: refusal, refusal };
    }
    case 'asks': {
      const field = tool
        .groups(context)
        .flatMap(({ fields }) => fields)
        .find(({ name }) => name === outcome.field);
      const asks = form.isAsked ? `Still to be said: ${field?.label ?? outcome.field}.` : `Begin with: ${field?.label ?? outcome.field}.`;
      return { ...common, status: asks, asks };
    }
  }
}

/** The page of one calculator. */
export function presentTool(asked: Asked): ToolView {
  const { tool, context, address } = asked;
  return {
    title: tool.title,
    head: { title: tool.title, lead: tool.lead, rest: tool.rest },
    tabs: benchTabs(tool.key),
    form: {
      ...presentForm(withRefusal(asked), { groups: tool.groups(context), units: context.units, action: address.path }),
      errors: summaryOf(asked.form),
    },
    units: presentUnits(context.units, address.query === '' ? address.path : `${address.path}?${address.query}`),
    answer: answerView(asked),
    manual: THE_MANUAL_RULES,
    scripts: ['coolant.js'],
  };
}
