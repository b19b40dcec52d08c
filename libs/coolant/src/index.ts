export { type Glycol, GLYCOL_NAME } from './glycol.ts';
export { type Grounds, type Outcome, type Problem, type ProblemCode, type Refused, type Warning, type WarningCode } from './outcome.ts';
export { type Strength, type StrengthInput } from './strength/strength.ts';
export { type Additive, type AdditiveInput, type ProductLabel } from './strength/additive.ts';
export { FALLBACK_PRODUCT_MASS_PERCENT, toAdditive } from './strength/to-additive.ts';
export { toStrength } from './strength/to-strength.ts';
export { DEFAULT_MARGIN_K, type TargetInput } from './strength/to-target.ts';
export { type ProductLimits } from './strength/strength-warnings.ts';
export { productPercent } from './strength/product-percent.ts';
export { shownProtection } from './strength/shown-protection.ts';
export { protection, type Protection, type ProtectionInput } from './strength/protection.ts';
export { type Jug } from './recipe/jugs.ts';
export { jugPlan, type JugPlan, type JugPlanInput } from './recipe/jug-plan.ts';
export { DEFAULT_MARK_ML } from './recipe/default-mark.ts';
export { type PouringStep } from './recipe/pouring-order.ts';
export { type MixtureResult, type Recipe, type RecipeInput, type RoundedJugs } from './recipe/recipe.types.ts';
export { recipe } from './recipe/recipe.ts';
export { recipeAfterFlush, type RecipeAfterFlush, type RecipeAfterFlushInput } from './recipe/recipe-after-flush.ts';
export { refillSpace, type RefillSpaceInput } from './recipe/refill-space.ts';
export { replacement, type Replacement, type ReplacementInput } from './recipe/replacement.ts';
export { flush, type Flush, type FlushInput } from './recipe/flush.ts';
export { boiling, type Boiling, type BoilingInput } from './boiling/boiling.ts';
export { expansion, type Expansion, type ExpansionInput, type TankSpace } from './heat/expansion.ts';
export { coolantProperties, type PropertiesInput } from './heat/coolant-properties.ts';
export { type MixtureProperties } from './heat/mixture-properties.ts';
export { heatCarrying, type HeatCarrying, type HeatCarryingInput, type HeatCarryingRow } from './heat/heat-carrying.ts';
export { densityKgPerL } from './heat/density.ts';
export { refractometer, type RefractometerInput, type RefractometerResult } from './instruments/refractometer.ts';
export { hydrometer, type HydrometerInput, type HydrometerResult } from './instruments/hydrometer.ts';
export { TECHNOLOGIES, type CoolantTechnology, type TechnologyFacts } from './data/technologies.ts';
export { mixingAdvice, type MixingAdvice, type MixingInput } from './fluid/mixing-advice.ts';
export { serviceLife, type ServiceLife, type ServiceLifeInput } from './fluid/service-life.ts';
export { WATER_LIMITS, type WaterAnalysis, type WaterLimit } from './data/water-limits.ts';
export { waterQuality, type WaterItem, type WaterQuality, type WaterQualityInput } from './fluid/water-quality.ts';
export {
  type CardVolume,
  type Drained,
  type FillAccount,
  type FillAccountInput,
  type FillStage,
  type FillStep,
  type FillTolerances,
  type MorningVerdict,
  type Poured,
  type ShortfallVerdict,
} from './job/fill-account.types.ts';
export { DEFAULT_FILL_TOLERANCES, fillAccount } from './job/fill-account.ts';
export { pouredByStage, type PouredEntry } from './job/poured-by-stage.ts';
export { pouredStrength, type PouredStrength, type PouredStrengthInput } from './job/poured-strength.ts';
export { compareStrength, type CompareStrengthInput, type StrengthComparison } from './job/compare-strength.ts';
export { impliedSystem, type ImpliedSystem, type ImpliedSystemInput } from './job/implied-system.ts';
export {
  DEFAULT_TIME_CONSTANT_MIN,
  coolDownTemperature,
  coolDownTime,
  type CoolDownInput,
  type CoolDownTemperature,
  type CoolDownTime,
} from './job/cool-down.ts';
export { learnTimeConstant, type CoolDownReading } from './job/learn-time-constant.ts';
export {
  SAFE_TO_OPEN_C,
  safeToOpen,
  type CoolantReading,
  type SafeToOpen,
  type SafeToOpenInput,
  type ThermometerKind,
} from './job/safe-to-open.ts';
export { coldForLevel, coldStart, type ColdEnough } from './job/cold-enough.ts';
export { CAUTIONS, type Caution, type CautionMoment } from './data/cautions.ts';
export { productFor } from './shelf/product-for.ts';
