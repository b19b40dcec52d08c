import { type Drawing, type DrawingOptions, warmUpChart, type WarmUpData, type WarmUpKnee, type WarmUpLog } from '#libs/charts';
import { type Sample, thinForChart, type WarmUpAnalysis } from '#libs/warm-up';

/** More than a drawing can show; a log with more readings a second is averaged down to them. */
const MOST_POINTS = 4000;

/** A log as it is drawn. */
interface LogToDraw {
  label: string;
  samples: readonly Sample[];
  analysis: WarmUpAnalysis;
}

export interface LogsToDraw {
  before: LogToDraw | null;
  after: LogToDraw | null;
  /** The mark of the part that is in the car; null draws no band. */
  nominalC: number | null;
  /** Where the paper asks for it. */
  heightPx?: number;
}

/** Measured points, the fitted line, the bend with its interval, the band and the speeds, laid on one another. */
export const drawLogs = ({ before, after, ...rest }: LogsToDraw, options: DrawingOptions): Drawing =>
  warmUpChart({ before: before && curveOf(before), after: after && curveOf(after), ...rest } satisfies WarmUpData, options);

function curveOf({ label, samples, analysis }: LogToDraw): WarmUpLog {
  const startS = samples[0]?.timeS ?? 0;
  const minute = (timeS: number): number => (timeS - startS) / 60;
  return {
    label,
    samples: thinForChart(samples, MOST_POINTS),
    ...(analysis.fit ? { fit: analysis.fit.points.map(({ timeS, tempC }) => ({ minute: minute(timeS), tempC })) } : {}),
    knee: kneeOf(analysis, minute),
  };
}

/** The opening where there is one; else only that the climb ends there, which other valves and an open one do too. */
function kneeOf({ knee, openingC }: WarmUpAnalysis, minute: (timeS: number) => number): WarmUpKnee | null {
  if (!knee) return null;
  if (openingC) {
    const { estimate, low, high } = openingC;
    return { minute: minute(knee.timeS), tempC: round(estimate), halfWidthC: round(Math.max(high - estimate, estimate - low)) };
  }
  const { lowC, highC } = knee.interval;
  return {
    minute: minute(knee.timeS),
    tempC: round(knee.tempC),
    halfWidthC: round(Math.max(highC - knee.tempC, knee.tempC - lowC)),
    words: 'the climb ends',
  };
}

/** What the reading can carry. */
const round = (tempC: number): number => Math.round(tempC);
