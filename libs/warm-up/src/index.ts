export { analyseWarmUp } from './analyse-warm-up.ts';
export { WarmUpInputError } from './warm-up-input-error.ts';
export { type WarmUpInput } from './types/warm-up-input.ts';
export { type Sample } from './types/sample.ts';
export { type ThermostatKind } from './types/thermostat-kind.ts';
export {
  type Cleaned,
  type CurvePoint,
  type FallWithSpeed,
  type FanCycling,
  type FittedLine,
  type HeatInput,
  type Knee,
  type Verdict,
  type WarmUpAnalysis,
  type Yardstick,
  type YardstickCondition,
} from './types/analysis.ts';
export { type HeaterUse } from './model/heater-share.ts';
export { readLog } from './log/read-log.ts';
export { withoutPlaces } from './log/without-places.ts';
export { parseUnitsAnswer, type UnitsAnswer } from './log/parse-units-answer.ts';
export { readTypedReadings, type TypedReadings } from './log/read-typed-readings.ts';
export { LOG_LIMITS, type LogLimits } from './log/log-limits.ts';
export { type Quantity } from './log/quantity.ts';
export { type TimeUnit, type Unit } from './log/units.ts';
export { type Ask, type DroppedRows, type LogAnswers, type LogReading, type Understood, type UnderstoodColumn } from './log/types.ts';
export { compareLogs, type Comparison } from './compare/compare-logs.ts';
export { type Outcome } from './compare/outcome.ts';
export { gaugeObservation, type GaugeFinding, type GaugeObservation } from './gauge-observation.ts';
export { thinForChart, type ChartPoint } from './thin-for-chart.ts';
export { closedPhaseTempC, closedPhaseTimeS, type ClosedPhase } from './model/closed-phase.ts';
export { decodePid } from './pids/decode-pid.ts';
export { PID_FORMULAS, type PidFormula } from './pids/pid-formulas.ts';
