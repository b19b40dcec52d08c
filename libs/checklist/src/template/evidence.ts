/** What can sensibly be typed; the words say what to check when it is not. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly words: string;
}

/** How a temperature is taken: infrared is fooled by bare metal, the engine's own sensor may be the fault or hang in air. */
export type Method = 'contact' | 'infrared' | 'engine-sensor' | 'other';

export interface Instrument {
  readonly key: string;
  readonly words: string;
  readonly method: Method;
  /** Expanded uncertainty U (k = 2), in the unit of the reading. */
  readonly expandedU: number;
}

export interface Place {
  readonly key: string;
  readonly words: string;
  readonly bareMetal: boolean;
}

/** A figure that belongs to one choice, such as the air temperature when the fan was not reached. */
export interface Ask {
  readonly key: string;
  readonly words: string;
  readonly unit: string;
  readonly range: Range;
}

export interface Option {
  readonly key: string;
  readonly words: string;
  /** On a hold point: this answer is the evidence that passes it. */
  readonly passes?: boolean;
  /** This answer ends the card's work on the car, in these words. */
  readonly stops?: string;
  readonly asks?: readonly Ask[];
}

/** When in the job coolant went in: the columns of the fill account. */
export const FILL_STAGES = ['first-fill', 'after-short-run', 'after-run-hot', 'next-morning'] as const;
export type FillStage = (typeof FILL_STAGES)[number];

/** What a step asks for. `fact` names the figure under which the card keeps it. */
export type Evidence =
  | { readonly kind: 'tick' }
  | {
      readonly kind: 'reading';
      readonly fact: string;
      readonly unit: string;
      readonly range: Range;
      readonly instruments: readonly Instrument[];
    }
  | {
      readonly kind: 'cold-reading';
      readonly fact: string;
      readonly range: Range;
      readonly instruments: readonly Instrument[];
      readonly places: readonly Place[];
    }
  | { readonly kind: 'litres'; readonly fact: string; readonly range: Range }
  | { readonly kind: 'choice'; readonly fact: string; readonly options: readonly Option[] }
  /** Names of things; with `returns`, the list of that step is shown and only what is left off is named. */
  | { readonly kind: 'list'; readonly fact: string; readonly returns?: string }
  /** Counted back against counted out. */
  | { readonly kind: 'count'; readonly what: string }
  | { readonly kind: 'variant' }
  | { readonly kind: 'torque' }
  | { readonly kind: 'jugs'; readonly fill: FillStage }
  | { readonly kind: 'timer'; readonly minutes: number | null }
  | { readonly kind: 'level'; readonly fact: string; readonly range: Range; readonly fill?: FillStage };

export type EvidenceKind = Evidence['kind'];
