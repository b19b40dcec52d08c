/** Why a calculation was refused. A program branches on it; people read the message. */
export type ProblemCode =
  /** Not a finite number where one is needed. */
  | 'not-a-number'
  /** A number that can't mean anything here, such as a negative volume. */
  | 'meaningless-value'
  /** None, or more than one, of fields of which exactly one is needed. */
  | 'exactly-one-needed'
  /** A calendar date that doesn't exist or isn't written as year-month-day. */
  | 'not-a-date'
  /** Part of the old coolant stays in, and nobody said how strong it is. */
  | 'residual-needed'
  /** An additive can't be given by its own freezing point. */
  | 'additive-by-freezing-point'
  /** Sensible, but outside what the published data covers. */
  | 'outside-published-range'
  /** More glycol than the published freezing tables cover. */
  | 'beyond-table'
  /** More comes out or goes in than the system holds. */
  | 'more-than-system'
  /** The space that was made doesn't suffice: more must be drained. */
  | 'drain-more'
  /** However much is drained, this additive is weaker than the target. */
  | 'additive-too-weak'
  /** A fluid without water: the tables and the mixing rule don't apply. */
  | 'waterless-fluid'
  /** A label pair that not even pure glycol could keep. */
  | 'label-impossible'
  /** At this temperature the mixture is slush. */
  | 'below-freezing-point'
  /** The instrument's reading belongs to no mixture of this glycol and water. */
  | 'reading-off-scale'
  /** Cooling towards the air never gets there. */
  | 'never-reached'
  /** The figures given contradict each other. */
  | 'contradiction';

/** An expected refusal: what is wrong and what to change. */
export interface Problem {
  readonly code: ProblemCode;
  /** `malformed`: the input makes no sense as it stands. `impossible`: it makes sense, but can't be had. */
  readonly kind: 'malformed' | 'impossible';
  readonly message: string;
  /** The field to change. */
  readonly field?: string;
  /** The figure that would be accepted, in the unit of the field. */
  readonly limit?: number;
  /** The total space that would make the recipe possible, L. */
  readonly requiredDrainL?: number;
}

export interface Refused {
  readonly ok: false;
  readonly problem: Problem;
}

/** Either the result or why there is none. Expected refusals never throw. */
export type Outcome<Result> = ({ readonly ok: true } & Result) | Refused;

/** Something the user should know before acting on a result that stands. */
export type WarningCode =
  | 'above-useful-maximum'
  | 'air-may-be-trapped'
  | 'at-least'
  | 'below-corrosion-limit'
  | 'capacity-is-refill'
  | 'check-for-leak'
  | 'content-from-fallback'
  | 'content-taken-as-pure'
  | 'engine-sensor'
  | 'estimate'
  | 'estimate-not-measurement'
  | 'gravity-insensitive'
  | 'flushing-water-stays'
  | 'hose-not-soft'
  | 'infrared-on-bare-metal'
  | 'kept-left-over'
  | 'margin-small'
  | 'measured-differs'
  | 'mixing-technologies'
  | 'more-than-space'
  | 'no-protection'
  | 'pressure-not-checked'
  | 'residual-credited-at-limit'
  | 'rounded-too-weak'
  | 'rounded-overfills'
  | 'sample-not-at-20'
  | 'scale-unknown'
  | 'service-due'
  | 'stronger-than-target'
  | 'tank-too-small'
  | 'water-unsuitable'
  | 'wrong-scale';

export interface Warning {
  readonly code: WarningCode;
  readonly text: string;
}

/** What a result rests on. Shown beside it, folded or not, and in the printed slip. */
export interface Grounds {
  readonly assumptions: readonly string[];
  readonly warnings: readonly Warning[];
  readonly sources: readonly string[];
}

/**
 * An expected refusal, ready to return.
 *
 * @param problem What is wrong and what to change
 * @example refuse({ code: 'not-a-number', kind: 'malformed', message: 'Give the volume in litres.' }).ok // false
 */
export function refuse(problem: Problem): Refused {
  return { ok: false, problem };
}
