import type { CautionMoment, Outcome, Warning } from '#libs/coolant';
import type { BenchContext } from '../bench-context.ts';
import type { ReadForm } from '../form/bench-field.ts';
import type { FieldGroup } from '../form/field-group.ts';
import type { ResultFigure } from '../result-figure.ts';

export interface ToolTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

/** What a calculator answers; sentences of the libraries stand in °C, L and kPa and are turned into the person's units later. */
export interface ToolAnswer {
  readonly headline: string;
  readonly figures: readonly ResultFigure[];
  readonly lines: readonly string[];
  readonly table?: ToolTable;
  readonly sure: string;
  readonly assumptions: readonly string[];
  readonly warnings: readonly Warning[];
  readonly sources: readonly string[];
}

export type ToolOutcome =
  | { readonly kind: 'asks'; readonly field: string }
  | { readonly kind: 'refused'; readonly field: string; readonly message: string }
  | { readonly kind: 'ready'; readonly answer: ToolAnswer };

/** One calculator of the bench: its form, its reckoning, its cautions. */
export interface Tool {
  readonly key: string;
  readonly title: string;
  readonly lead: string;
  readonly rest: string;
  readonly groups: (context: BenchContext) => readonly FieldGroup[];
  readonly reckon: (form: ReadForm, context: BenchContext) => ToolOutcome;
  readonly cautions: readonly CautionMoment[];
}

export const asks = (field: string): ToolOutcome => ({ kind: 'asks', field });

/** A library's outcome as the page's: a refusal goes to the field that it names. */
export function outcomeOf<Result extends object>(
  outcome: Outcome<Result>,
  fields: Readonly<Record<string, string>>,
  answer: (result: Result) => ToolAnswer,
): ToolOutcome {
  if (outcome.ok) return { kind: 'ready', answer: answer(outcome) };
  const { field = '', message } = outcome.problem;
  return { kind: 'refused', field: fields[field] ?? fields['*'] ?? field, message };
}
