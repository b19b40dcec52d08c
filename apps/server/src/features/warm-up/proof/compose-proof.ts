import { compareLogs, type Sample } from '#libs/warm-up';
import type { Workshop } from '../../../platform/workshop-facts.ts';
import { plainDate } from '../../../web/dates.ts';
import type { KeptLog } from '../keeping/logs.repository.ts';
import type { RunUpJob } from '../keeping/run-up-jobs.repository.ts';
import { comparisonRows } from './comparison-rows.ts';
import { drawLogs, type LogsToDraw } from './draw-logs.ts';
import type { LogPair } from './pair-of-logs.ts';
import type { ProofDocument } from './proof-document.ts';
import { tellLog, type ToldLog } from './told-log.ts';
import { KIND_WORDS, OUTCOME_PEGS, verdictPeg, verdictSaid } from './verdict-words.ts';
import { sayYardstick } from './yardstick-words.ts';

const PAPER_PX = 662;
/** Verdict, curve and figures fill the first page; grounds and limits stand on the next. */
const PAPER_HEIGHT_PX = 430;

export interface ProofFacts {
  job: RunUpJob;
  workshop: Workshop;
  pair: LogPair;
  samplesOf: ReadonlyMap<string, readonly Sample[]>;
}

const METHOD =
  'The bend is found by a curve with a break in time, heat put in and heat lost to the air; what the reading can carry is whole degrees. A verdict says how the engine warms up; it is no warranty of its parts.';

/** What the logs of a job prove, ready for paper. */
export function composeProof({ job, workshop, pair, samplesOf }: ProofFacts): ProofDocument {
  const { before, after } = pair;
  const comparison = compareLogs(before?.analysis ?? null, after?.analysis ?? null);
  const told = toldPair(pair);
  const speaking = after ?? before;
  return {
    workshop: { name: workshop.name, lines: letterLines(workshop) },
    isDemo: workshop.isDemo,
    customer: job.customer.name,
    vehicle: [`${job.vehicle.make} ${job.vehicle.model}`, job.vehicle.registration, ...(speaking ? [partWords(speaking)] : [])],
    job: job.number,
    outcome: outcomeOf(job, pair),
    owed: comparison.proofOwed && job.asksProof ? owedWords(job) : null,
    columns: told.map(({ heading }) => heading),
    rows: comparisonRows(told),
    verdicts: told.map(({ verdict, howSure }) => ({ ...verdict, sure: howSure })),
    chart: chartOf(pair, samplesOf),
    reasons: reasonsOf(pair),
    yardstick: speaking?.analysis.yardstick ? sayYardstick(speaking.analysis.yardstick) : null,
    limits: comparison.limits,
    advice: after?.analysis.advice ?? before?.analysis.advice ?? [],
    method: METHOD,
  };
}

/** What both logs come to; before a repair, or without one, what the one log found. */
export function outcomeOf({ asksProof }: RunUpJob, { before, after }: LogPair): ProofDocument['outcome'] {
  if (before && !after && !asksProof)
    return { peg: verdictPeg(before.analysis), headline: `Found: ${verdictSaid(before.analysis)}`, sentences: [before.analysis.behaviour] };
  const { outcome, headline, sentences } = compareLogs(before?.analysis ?? null, after?.analysis ?? null);
  return { peg: OUTCOME_PEGS[outcome], headline, sentences };
}

export function toldPair({ before, after }: LogPair): ToldLog[] {
  const told = (log: KeptLog, heading: string): ToldLog => tellLog(log.analysis, { heading, when: plainDate(log.loggedOn) });
  return [...(before ? [told(before, 'Before')] : []), ...(after ? [told(after, 'After')] : [])];
}

/** Band and mark are the part's that is in the car now. */
export function logsToDraw({ before, after }: LogPair, samplesOf: ProofFacts['samplesOf']): LogsToDraw {
  const drawn = (log: KeptLog, word: string) => ({
    label: `${word}, ${plainDate(log.loggedOn)}`,
    samples: samplesOf.get(log.id) ?? [],
    analysis: log.analysis,
  });
  return {
    before: before && drawn(before, 'Before'),
    after: after && drawn(after, 'After'),
    nominalC: after?.nominalOpeningC ?? before?.nominalOpeningC ?? null,
  };
}

function chartOf(pair: LogPair, samplesOf: ProofFacts['samplesOf']): ProofDocument['chart'] {
  const { svg, title } = drawLogs(
    { ...logsToDraw(pair, samplesOf), heightPx: PAPER_HEIGHT_PX },
    {
      palette: 'print',
      idPrefix: 'proof',
      widthPx: PAPER_PX,
      ground: 'sheet',
    },
  );
  return { svg, title };
}

export function reasonsOf({ before, after }: LogPair): ProofDocument['reasons'] {
  const logs = [
    { heading: 'Before the repair', log: before },
    { heading: 'After it', log: after },
  ];
  return logs.flatMap(({ heading, log }) => (log ? [{ heading, words: log.analysis.reasons }] : []));
}

export function owedWords({ debts }: RunUpJob): string {
  const dueOn = debts[0]?.dueOn;
  return dueOn
    ? `Proof still owed by ${plainDate(dueOn)}: a warm-up log from a cold start.`
    : 'Proof still owed: a warm-up log from a cold start.';
}

function partWords({ thermostatKind, nominalOpeningC }: KeptLog): string {
  const kind = KIND_WORDS[thermostatKind];
  return nominalOpeningC === null ? kind : `${kind}, marked ${nominalOpeningC} °C`;
}

function letterLines({ addressLines, postcode, city, email, phone }: Workshop): string[] {
  const place = [...addressLines, [postcode, city].filter((part) => part !== '').join(' ')].filter((line) => line !== '').join(', ');
  return [place, [email, phone].filter((part) => part !== '').join(', ')].filter((line) => line !== '');
}
