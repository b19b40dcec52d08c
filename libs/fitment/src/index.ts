export { benchTest } from './bench-test/bench-test.ts';
export { benchTestCautions, defaultBenchTestLimits } from './bench-test/bench-test-limits.ts';
export {
  type BenchTestAnswer,
  type BenchTestFinding,
  type BenchTestLimits,
  type BenchTestOutcome,
  type BenchTestPurpose,
  type BenchTestQuestion,
  type BenchTestVerdict,
} from './bench-test/bench-test.types.ts';
export { DEFAULT_MISREADING_RATE } from './comparison/category-model.ts';
export { comparison } from './comparison/comparison.ts';
export {
  type ComparisonAnswer,
  type ComparisonCandidate,
  type ComparisonFeature,
  type ComparisonQuestion,
  type ComparisonReading,
  type Criticality,
  type FeatureFinding,
  type FeatureValue,
  type FindingNote,
  type NextReading,
  type RankedCandidate,
} from './comparison/comparison.types.ts';
export { conformance } from './conformance/conformance.ts';
export { type ConformanceAnswer, type ConformanceQuestion, type ConformanceVerdict } from './conformance/conformance.types.ts';
export { checkReading, type ReadingCheck } from './families/check-reading.ts';
export { comparisonFeatures, type FamilyComparison } from './families/comparison-features.ts';
export { instrumentNames } from './families/instruments.ts';
export { partFamilies } from './families/part-families.ts';
export {
  type CategoryFeature,
  type FamilyFeature,
  type FeatureInstrument,
  type FeatureUnit,
  type InstrumentKey,
  type NumberFeature,
  type PartFamily,
} from './families/part-family.types.ts';
export { FitmentInputError, type FitmentInputCode, type FitmentProblem } from './fitment-input-error.ts';
export { defaultHistoryWeights, type HistoryWeights } from './history/history-weights.ts';
export { type FitmentEvent, type HistoryPrior, type HistoryQuestion, priorFromHistory } from './history/prior-from-history.ts';
export { criticalRatio, type ShelfPiece } from './order/newsvendor.ts';
export { orderPlan } from './order/order-plan.ts';
export {
  type OrderCandidate,
  type OrderFlip,
  type OrderPlanAnswer,
  type OrderPlanLine,
  type OrderQuestion,
  type Recourse,
} from './order/order-plan.types.ts';
export { type Demand, shelfQuantity } from './order/shelf-quantity.ts';
export { normalCdf } from './probability/normal-cdf.ts';
export { normalQuantile } from './probability/normal-quantile.ts';
