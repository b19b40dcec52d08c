import type { Option } from '../../../web/form-field.ts';

/** What a figure measures: says its unit for each person, how it is converted and how finely it is written. */
export type Quantity =
  | 'temperature'
  | 'difference'
  | 'volume'
  | 'mark'
  | 'pressure'
  | 'percent'
  | 'massPercent'
  | 'metres'
  | 'kilometres'
  | 'months'
  | 'perLitre'
  | 'count'
  | 'bare';

/** What counts while nobody types anything else: `known` by a record or a measurement, `assumed` by a setting or a rule. */
export interface Standing<Value> {
  readonly value: Value;
  readonly how: 'known' | 'assumed';
  /** Who says so, when, or what it rests on. */
  readonly said: string;
}

interface Common {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  /** Shown only while the named choice has this value: the wrapper's class, for the style sheet. */
  readonly when?: string;
  /** Takes half the form's width. */
  readonly isHalf?: boolean;
}

/** A figure, held in °C, K, L, kPa, % or the like; `mark` in mL. */
export interface FigureField extends Common {
  readonly kind: 'figure';
  readonly quantity: Quantity;
  readonly least: number;
  readonly most: number;
  /** Begins the sentence that tells the bounds: "A system holds". */
  readonly holds: string;
  readonly standing?: Standing<number>;
  readonly isOptional?: boolean;
  readonly decimals?: number;
}

export interface ChoiceField extends Common {
  readonly kind: 'choice';
  readonly options: readonly Option[];
  readonly standing: Standing<string>;
}

export interface DayField extends Common {
  readonly kind: 'day';
  readonly isOptional?: boolean;
}

export type BenchField = FigureField | ChoiceField | DayField;

/** How the value in force came to be. */
export type FieldState = 'typed' | 'known' | 'assumed' | 'kept' | 'empty';

/** A form as it was sent, with the value in force of each field: in °C, L, kPa whatever the person's units. */
export interface ReadForm {
  readonly figures: Readonly<Record<string, number | undefined>>;
  readonly choices: Readonly<Record<string, string>>;
  readonly days: Readonly<Record<string, string | undefined>>;
  readonly states: Readonly<Record<string, FieldState>>;
  /** What stands in each field. */
  readonly texts: Readonly<Record<string, string>>;
  readonly errors: Readonly<Record<string, string>>;
  /** Somebody has sent the form, or a link with figures in it. */
  readonly isAsked: boolean;
}
