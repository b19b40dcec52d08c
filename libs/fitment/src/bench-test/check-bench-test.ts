import { type FitmentProblem } from '../fitment-input-error.ts';
import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';
import { type BenchTestLimits, type BenchTestQuestion } from './bench-test.types.ts';

/** Readings this far over the boiling point are the thermometer's own error; more can't be plain water. */
const BOILING_SLACK_C = 1;

/**
 * Refuses figures that no bench test can give.
 *
 * @throws FitmentInputError `malformed` for bad figures, `impossible` for water hotter than boiling or readings out of order
 */
export function checkBenchTest(question: BenchTestQuestion, limits: BenchTestLimits): void {
  refuseProblems('malformed', [...settingProblems(question, limits), ...readingProblems(question)]);
  refuseProblems('impossible', [...boilingProblems(question), ...orderProblems(question)]);
}

function settingProblems(question: BenchTestQuestion, limits: BenchTestLimits): FitmentProblem[] {
  const { purpose, stampC, boilingPointC, thermometerUncertaintyC, liftUncertaintyMm, heatingCPerMin = 1 } = question;
  return [
    ...(['suspect', 'acceptance'].includes(purpose)
      ? []
      : [{ field: 'purpose', message: "The purpose must be 'suspect' or 'acceptance'." }]),
    ...numberProblems(stampC, { field: 'stampC', words: 'The stamped temperature in °C', min: 60, max: 115 }),
    ...numberProblems(boilingPointC, { field: 'boilingPointC', words: 'The boiling point in °C', min: 70, max: 102 }),
    ...numberProblems(thermometerUncertaintyC, {
      field: 'thermometerUncertaintyC',
      words: 'The uncertainty of the thermometer',
      min: 0,
      max: 10,
    }),
    ...numberProblems(liftUncertaintyMm, { field: 'liftUncertaintyMm', words: 'The uncertainty of the lift gauge', min: 0, max: 10 }),
    ...numberProblems(heatingCPerMin, { field: 'heatingCPerMin', words: 'The heating in °C a minute', above: 0, max: 60 }),
    ...numberProblems(limits.openingToleranceC, { field: 'limits.openingToleranceC', words: 'The opening tolerance', above: 0, max: 15 }),
    ...numberProblems(limits.travelC, { field: 'limits.travelC', words: 'The travel to full lift in °C', above: 0, max: 40 }),
    ...numberProblems(limits.leastLiftMm, { field: 'limits.leastLiftMm', words: 'The least lift in mm', above: 0, max: 40 }),
    ...numberProblems(limits.closedBelowC, { field: 'limits.closedBelowC', words: 'The closing distance in °C', above: 0, max: 40 }),
  ];
}

function readingProblems({ readings }: BenchTestQuestion): FitmentProblem[] {
  const temperatures = [
    ['startC', readings.startC, 'The start of opening in °C'],
    ['fullLiftC', readings.fullLiftC, 'The full lift in °C'],
    ['closedC', readings.closedC, 'The closing in °C'],
    ['hottestC', readings.hottestC ?? null, 'The hottest water in °C'],
  ] as const;
  return [
    ...temperatures.flatMap(([key, value, words]) =>
      value === null ? [] : numberProblems(value, { field: `readings.${key}`, words, min: 0, max: 120 }),
    ),
    ...(readings.liftMm === null
      ? []
      : numberProblems(readings.liftMm, { field: 'readings.liftMm', words: 'The lift in mm', min: 0, max: 40 })),
  ];
}

function boilingProblems({ readings, boilingPointC }: BenchTestQuestion): FitmentProblem[] {
  const { startC, fullLiftC, closedC, hottestC = null } = readings;
  return Object.entries({ startC, fullLiftC, closedC, hottestC }).flatMap(([key, value]) =>
    value === null || value <= boilingPointC + BOILING_SLACK_C
      ? []
      : [
          {
            field: `readings.${key}`,
            message: `Plain water boils at ${boilingPointC} °C here, so ${value} °C was not read in it: check the figure, the thermometer and the altitude.`,
          },
        ],
  );
}

function orderProblems({ readings }: BenchTestQuestion): FitmentProblem[] {
  const { startC, fullLiftC, closedC } = readings;
  return [
    ...(startC !== null && fullLiftC !== null && fullLiftC < startC
      ? [
          {
            field: 'readings.fullLiftC',
            message: `Full lift at ${fullLiftC} °C can't come before the start of opening at ${startC} °C: swap or read again.`,
          },
        ]
      : []),
    ...(fullLiftC !== null && closedC !== null && closedC > fullLiftC
      ? [
          {
            field: 'readings.closedC',
            message: `It can't be shut at ${closedC} °C, above its full lift at ${fullLiftC} °C: read it while cooling.`,
          },
        ]
      : []),
  ];
}
