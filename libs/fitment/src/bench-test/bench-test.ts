import { benchTestCautions, defaultBenchTestLimits, LAG_WORTH_A_WARNING_C, WAX_LAG_S } from './bench-test-limits.ts';
import { closingFinding, fullLiftFinding, liftFinding, startFinding } from './bench-test-findings.ts';
import {
  type BenchTestAnswer,
  type BenchTestFinding,
  type BenchTestOutcome,
  type BenchTestPurpose,
  type BenchTestQuestion,
} from './bench-test.types.ts';
import { checkBenchTest } from './check-bench-test.ts';

const SECONDS_PER_MINUTE = 60;

/**
 * Judges a thermostat in hot water against its stamp: start of opening, full lift, lift, closing, each guard-banded with the
 * thermometer's uncertainty and the wax's lag behind fast heating. Where opening plus travel passes the boiling point, full
 * lift is *not testable in plain water*, never a failure.
 *
 * It is evidence of a suspect part's fault or of a new part's acceptance. It says nothing about which opening temperature is
 * right for a car: that comes from stamp, catalogue or vehicle.
 *
 * Source: limits as in {@link defaultBenchTestLimits}; guard bands as in `conformance`.
 *
 * @param question - temperatures in °C, lift in mm; boiling point for the altitude from the coolant library
 * @throws FitmentInputError `malformed`, or `impossible` for water above boiling or readings out of order
 * @example
 * benchTest({
 *   purpose: 'suspect', stampC: 88, boilingPointC: 100, thermometerUncertaintyC: 0.25, liftUncertaintyMm: 0.1,
 *   readings: { startC: 79, fullLiftC: 92, liftMm: 9, closedC: 75 },
 * }).outcome; // 'faulty': it opens at 79 °C
 */
export function benchTest(question: BenchTestQuestion): BenchTestAnswer {
  const limits = { ...defaultBenchTestLimits, ...question.limits };
  checkBenchTest(question, limits);
  const lagC = ((question.heatingCPerMin ?? 0) * WAX_LAG_S) / SECONDS_PER_MINUTE;
  const temperatureUncertaintyC = Math.hypot(question.thermometerUncertaintyC, lagC / Math.sqrt(3));
  const judging = { question, limits, temperatureUncertaintyC };
  const start = startFinding(judging);
  const fullLift = fullLiftFinding(judging);
  const lift = liftFinding(judging);
  const closing = closingFinding(judging);
  const outcome = outcomeOf(question.purpose, [start, fullLift, lift, closing]);
  return {
    start,
    fullLift,
    lift,
    closing,
    outcome,
    statement: statementOf(outcome, [start, fullLift, lift, closing]),
    warnings: warningsOf(question, lagC),
    cautions: benchTestCautions,
  };
}

function outcomeOf(purpose: BenchTestPurpose, findings: readonly BenchTestFinding[]): BenchTestOutcome {
  if (findings.some(({ verdict }) => verdict === 'does-not-conform')) return purpose === 'suspect' ? 'faulty' : 'refused';
  const isShown = findings.some(({ verdict }) => verdict === 'conforms');
  const isComplete = findings.every(({ verdict }) => verdict === 'conforms' || verdict === 'not-testable');
  if (!isShown || !isComplete) return 'not-proven';
  return purpose === 'suspect' ? 'no-fault-shown' : 'accepted';
}

function statementOf(outcome: BenchTestOutcome, findings: readonly BenchTestFinding[]): string {
  const wrong = findings.filter(({ verdict }) => verdict === 'does-not-conform').map(({ words }) => words);
  const untested = findings.some(({ verdict }) => verdict === 'not-testable') ? ' Full lift was not testable in plain water.' : '';
  switch (outcome) {
    case 'faulty':
      return `The part is faulty. ${wrong.join(' ')} This is no evidence of which opening temperature the car needs.`;
    case 'no-fault-shown':
      return `No fault was shown.${untested} This is no evidence of which opening temperature the car needs.`;
    case 'accepted':
      return `The new part agrees with its stamp.${untested}`;
    case 'refused':
      return `The new part does not agree with its stamp: don't fit it. ${wrong.join(' ')}`;
    case 'not-proven':
      return 'Neither shown good nor faulty: something was not recorded, or lies too near its limit for these instruments.';
  }
}

function warningsOf({ heatingCPerMin }: BenchTestQuestion, lagC: number): string[] {
  if (heatingCPerMin === undefined)
    return ['How fast the water was heated is not noted: fast heating makes every opening figure read high.'];
  if (lagC <= LAG_WORTH_A_WARNING_C) return [];
  return [
    `Heated at ${heatingCPerMin} °C a minute, the wax lags by up to ${lagC.toFixed(1)} °C and opening reads high: heat more gently near the stamp.`,
  ];
}
