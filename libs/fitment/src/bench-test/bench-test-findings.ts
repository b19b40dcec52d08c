import { judgeReading } from '../conformance/judge-reading.ts';
import { type BenchTestFinding, type BenchTestLimits, type BenchTestQuestion } from './bench-test.types.ts';
import { atLeast, atMost } from './one-sided.ts';

/** What the single findings are judged by. */
export interface BenchTestJudging {
  readonly question: BenchTestQuestion;
  readonly limits: BenchTestLimits;
  /** Thermometer and wax lag together, in °C. */
  readonly temperatureUncertaintyC: number;
}

const notRecorded = (what: string): BenchTestFinding => ({ verdict: 'not-recorded', words: `${what} was not recorded.` });

/** Start of opening against stamp ± tolerance; never having opened is judged by the hottest water. */
export function startFinding({ question, limits, temperatureUncertaintyC }: BenchTestJudging): BenchTestFinding {
  const { stampC, boilingPointC, readings } = question;
  const asked = `asked ${stampC} ± ${limits.openingToleranceC} °C`;
  if (readings.startC !== null) {
    const reading = {
      nominal: stampC,
      tolerance: limits.openingToleranceC,
      measured: readings.startC,
      standardUncertainty: temperatureUncertaintyC,
    };
    return { verdict: judgeReading(reading).verdict, words: `Opening starts at ${readings.startC} °C; ${asked}.` };
  }
  const latestC = stampC + limits.openingToleranceC;
  const hottestC = readings.hottestC ?? null;
  if (hottestC !== null) {
    const verdict = atMost({ measured: hottestC, limit: latestC, standardUncertainty: temperatureUncertaintyC });
    if (verdict === 'does-not-conform') return { verdict, words: `Had not opened at ${hottestC} °C; ${asked}.` };
  }
  if (latestC >= boilingPointC) return notTestable(`Opening by ${latestC} °C`, boilingPointC);
  return notRecorded('The start of opening');
}

/** Full lift at the latest at stamp + travel, where that can be reached in plain water. */
export function fullLiftFinding({ question, limits, temperatureUncertaintyC }: BenchTestJudging): BenchTestFinding {
  const { boilingPointC, readings } = question;
  const latestC = fullLiftLimitC({ question, limits });
  if (readings.fullLiftC !== null) {
    const verdict = atMost({ measured: readings.fullLiftC, limit: latestC, standardUncertainty: temperatureUncertaintyC });
    return { verdict, words: `Full lift at ${readings.fullLiftC} °C; asked by ${latestC} °C.` };
  }
  return latestC >= boilingPointC ? notTestable(`Full lift by ${latestC} °C`, boilingPointC) : notRecorded('Full lift');
}

/** Largest lift against the least asked. Too little of it proves nothing where the water boils before full lift is due. */
export function liftFinding({ question, limits }: BenchTestJudging): BenchTestFinding {
  const { boilingPointC, readings, liftUncertaintyMm } = question;
  const latestC = fullLiftLimitC({ question, limits });
  const isDue = latestC < boilingPointC;
  if (readings.liftMm === null) return isDue ? notRecorded('The lift') : notTestable(`Full lift by ${latestC} °C`, boilingPointC);
  const verdict = atLeast({ measured: readings.liftMm, limit: limits.leastLiftMm, standardUncertainty: liftUncertaintyMm });
  if (verdict !== 'conforms' && !isDue) return notTestable(`A lift of ${limits.leastLiftMm} mm by ${latestC} °C`, boilingPointC);
  return { verdict, words: `Lifts ${readings.liftMm} mm; asked at least ${limits.leastLiftMm} mm.` };
}

/** Quite shut again by stamp − the closing distance. */
export function closingFinding({ question, limits, temperatureUncertaintyC }: BenchTestJudging): BenchTestFinding {
  const { stampC, readings } = question;
  if (readings.closedC === null) return notRecorded('Closing');
  const latestC = stampC - limits.closedBelowC;
  const verdict = atLeast({ measured: readings.closedC, limit: latestC, standardUncertainty: temperatureUncertaintyC });
  return { verdict, words: `Shut again at ${readings.closedC} °C; asked by ${latestC} °C while cooling.` };
}

function fullLiftLimitC({ question, limits }: Pick<BenchTestJudging, 'question' | 'limits'>): number {
  return question.stampC + limits.travelC;
}

function notTestable(what: string, boilingPointC: number): BenchTestFinding {
  return { verdict: 'not-testable', words: `${what} is not testable in plain water, which boils at ${boilingPointC} °C here.` };
}
