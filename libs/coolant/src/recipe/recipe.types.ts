import { type Glycol } from '../glycol.ts';
import { type Grounds } from '../outcome.ts';
import { type AdditiveInput } from '../strength/additive.ts';
import { type ProductLimits } from '../strength/strength-warnings.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { type TargetInput } from '../strength/to-target.ts';
import { type Jug } from './jugs.ts';
import { type PouringStep } from './pouring-order.ts';

export interface RecipeInput {
  readonly glycol: Glycol;
  /** What the whole system holds, L. */
  readonly systemVolumeL: number;
  /** The space to fill: what was missing on arrival plus what was drained, L. Left out: the system is empty. */
  readonly drainedVolumeL?: number | undefined;
  /** Strength of what stays in. Needed as soon as something stays in. */
  readonly residual?: StrengthInput | undefined;
  /** The strength of what stays in was not read but assumed: said in the answer. */
  readonly isResidualAssumed?: boolean | undefined;
  /** What the system volume means: the dry system, or the usual refill after draining, which leaves the block's part out. */
  readonly capacityKind?: 'dry-fill' | 'service-refill' | undefined;
  readonly additive: AdditiveInput;
  readonly target: TargetInput;
  /** Size of the jugs, L; left out: no jugs. */
  readonly jugL?: number | undefined;
  /** Distance of the marks on the jug, mL; 50 where left out. */
  readonly markMl?: number | undefined;
  /** The product's own limits, from its label. */
  readonly limits?: ProductLimits | undefined;
}

/** A mixture as a recipe reports it. */
export interface MixtureResult {
  readonly resultVolumePercent: number;
  /** Null where it is stronger than the published table. */
  readonly resultMassPercent: number | null;
  readonly resultFreezingPointC: number;
  /** Volume % of product; null for ready-mixed. */
  readonly resultProductPercent: number | null;
}

/** The recipe in whole jug marks, with what truly comes of it. */
export interface RoundedJugs extends MixtureResult {
  readonly markMl: number;
  readonly jugs: readonly Jug[];
  readonly additiveL: number;
  readonly waterL: number;
  /** How much of the poured is over (positive) or short (negative) of a full system, L. */
  readonly overfillL: number;
}

export interface Recipe extends MixtureResult, Grounds {
  /** `mixed`: target met exactly. `water-alone`: already strong enough. */
  readonly way: 'mixed' | 'water-alone';
  /** Measured apart at 20 °C. */
  readonly additiveL: number;
  readonly waterL: number;
  readonly spaceL: number;
  readonly residualL: number;
  /** By how much additive and water measured apart exceed the space. */
  readonly shrinkL: number;
  /** What plain volume algebra would give for the additive, to compare. */
  readonly additiveByPlainVolumesL: number;
  readonly targetVolumePercent: number;
  readonly targetFreezingPointC: number;
  readonly additiveVolumePercent: number;
  readonly additiveMassPercent: number;
  readonly pouring: readonly PouringStep[];
  readonly jugs?: readonly Jug[];
  readonly roundedJugs?: RoundedJugs;
}
