/** From an instant up to, but not including, another; ms. */
export interface Window {
  readonly fromMs: number;
  readonly toMs: number;
}

export type PlaceKind = 'bay' | 'apron' | 'anywhere';

/** How cold the engine has to be before a phase: below a temperature, or so near to the air. */
export type ColdEnough = { readonly belowC: number } | { readonly aboveAirK: number };

export interface PlanPhase {
  readonly key: string;
  readonly durationMs: number;
  readonly place: PlaceKind;
  /** Only hands-on takes a person's time; nobody needed: it may also run outside the opening hours. */
  readonly attendance: 'hands-on' | 'within-earshot' | 'nobody';
  /** Parts or a promise: not before this instant. */
  readonly notBeforeMs?: number;
  /** At least so long after the phase before. */
  readonly waitBeforeMs?: number;
  readonly coldEnough?: ColdEnough;
  /** The engine is hot when it ends. */
  readonly endsHot?: boolean;
  /** The car can't be moved between this phase and the next: it keeps its place, overnight too. */
  readonly staysPut?: boolean;
}

export interface PlanRequest {
  readonly phases: readonly PlanPhase[];
  readonly earliestMs: number;
  readonly openings: readonly Window[];
  readonly places: readonly { readonly id: string; readonly kind: 'bay' | 'apron'; readonly busy: readonly Window[] }[];
  readonly people: readonly { readonly id: string; readonly busy: readonly Window[] }[];
  readonly engine: EngineHeat;
}

export interface EngineHeat {
  readonly airC: number;
  readonly timeConstantMs: number;
  /** The last reading, or an assumption. */
  readonly tempC: number;
  readonly atMs: number;
  /** How warm a phase leaves it that ends hot. */
  readonly hotC: number;
}

export interface PlannedPhase extends Window {
  readonly key: string;
  readonly placeId: string | null;
  readonly personId: string | null;
}

export type Plan =
  | { readonly ok: true; readonly phases: readonly PlannedPhase[]; readonly endsMs: number }
  | { readonly ok: false; readonly phase: string; readonly why: string };
