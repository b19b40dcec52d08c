import { shownProtection } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { BenchContext } from '../bench-context.ts';
import { resultFigure, type ResultFigure, textFigure } from '../result-figure.ts';
import { inUnits } from '../units/in-units.ts';
import { saidFigure } from '../units/measure.ts';
import type { AfterRun } from './compare-after-run.ts';
import type { StatedFact } from '../../customers/vehicle-facts.service.ts';
import type { FactKey } from './fact-keys.ts';

/** A figure of this job that is worth keeping with the car, as one button. */
interface KeepView {
  readonly label: string;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
}

export interface AfterRunView {
  readonly lead: string;
  readonly figures: readonly ResultFigure[];
  readonly lines: readonly string[];
  readonly keeps: readonly KeepView[];
}

interface Job {
  readonly id: string;
  readonly number: number;
  readonly facts: readonly StatedFact<FactKey>[];
}

const keep = (label: string, values: Readonly<Record<string, string>>): KeepView => ({
  label,
  hidden: Object.entries({ in: 'C-L-kPa', ...values }).map(([name, value]) => ({ name, value })),
});

function keeps(run: Exclude<AfterRun, { kind: 'not-read' }>, job: Job, { units, today }: BenchContext): readonly KeepView[] {
  const isKept = job.facts.some(({ key, jobId }) => key === 'freezing-point' && jobId === job.id);
  const isDated = job.facts.some(({ key, jobId }) => key === 'coolant-changed' && jobId === job.id);
  const impliedL = run.kind === 'compared' ? (run.implied?.systemVolumeL ?? null) : null;
  const isLearnt = job.facts.some(({ key, jobId }) => key === 'capacity' && jobId === job.id);
  const reading = saidFigure(run.measuredC, 'temperature', units);
  return [
    ...(isKept
      ? []
      : [
          keep(`Keep ${reading} with the car`, {
            key: 'freezing-point',
            figure: String(run.measuredC),
            source: `Read after the run, job ${job.number}`,
          }),
        ]),
    ...(isDated
      ? []
      : [keep('Keep today as the day of the change', { key: 'coolant-changed', changedOn: today, source: `Job ${job.number}` })]),
    ...(impliedL === null || isLearnt
      ? []
      : [
          keep(`Keep ${saidFigure(impliedL, 'volume', units)} beside what was stated`, {
            key: 'capacity',
            figure: impliedL.toFixed(2),
            capacityKind: 'dry fill',
            source: `Reckoned from the reading after the run, job ${job.number}`,
          }),
        ]),
  ];
}

/** Computed and measured side by side; where they are apart, what each of the two explanations would mean. */
export function presentAfterRun(run: AfterRun, job: Job, context: BenchContext): AfterRunView {
  const { units } = context;
  if (run.kind === 'not-read') return { lead: 'The mixed coolant has not been read after the run yet.', figures: [], lines: [], keeps: [] };
  const safe = (freezingPointC: number): string => formatFigure(shownProtection(freezingPointC, { unit: units.temperature }), 0);
  const measured = textFigure(safe(run.measuredC), units.temperature, { word: 'measured: safe to', said: 'read on this card' });
  if (run.kind === 'only-read') {
    return {
      lead: 'Read, with nothing to hold it against.',
      figures: [measured],
      lines: [inUnits(run.why, units)],
      keeps: keeps(run, job, context),
    };
  }
  const { comparison, implied } = run;
  const lines = [
    ...(implied?.systemVolumeL == null
      ? []
      : [`Either the system holds ${saidFigure(implied.systemVolumeL, 'volume', units)}, if what stayed in was as strong as noted;`]),
    ...(implied?.residualVolumePercent == null
      ? []
      : [
          `or what stayed in held ${formatFigure(implied.residualVolumePercent, 1)} % of pure glycol, if the capacity is right. One reading does not tell which.`,
        ]),
  ];
  return {
    lead: inUnits(comparison.text, units),
    figures: [
      textFigure(safe(comparison.computed.freezingPointC), units.temperature, { word: 'computed: safe to', said: 'from what was poured' }),
      measured,
      resultFigure(comparison.computed.volumePercent, 'percent', { units, word: 'computed', said: 'of pure glycol' }),
      resultFigure(comparison.measured.volumePercent, 'percent', {
        units,
        word: 'measured',
        said: `± ${comparison.toleranceVolumePercent} agree`,
      }),
    ],
    lines,
    keeps: keeps(run, job, context),
  };
}
