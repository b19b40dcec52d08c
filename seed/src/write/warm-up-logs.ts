import { analyseWarmUp, compareLogs, type LogReading, readLog, type Sample } from '#libs/warm-up';
import type { Prisma, Tx } from '#libs/db';
import type { KeptLog } from '../../../apps/server/src/features/warm-up/keeping/logs.repository.ts';
import { packSamples } from '../../../apps/server/src/features/warm-up/keeping/pack-samples.ts';
import { RUN_UP_JOB, toRunUpJob } from '../../../apps/server/src/features/warm-up/keeping/run-up-jobs.repository.ts';
import { composeProof } from '../../../apps/server/src/features/warm-up/proof/compose-proof.ts';
import { pairOfLogs } from '../../../apps/server/src/features/warm-up/proof/pair-of-logs.ts';
import type { Workshop } from '../../../apps/server/src/platform/workshop-facts.ts';
import { nextId } from '../ids.ts';
import type { JobPlan } from '../plan.ts';
import type { Random } from '../random.ts';
import { type DriveFacts, driveWarmUp } from '../warm-up-drive.ts';
import { laterBy } from '../workshop-hours.ts';
import type { WrittenJob } from './jobs.ts';
import type { Staff } from './workshop.ts';

/** A drive of a job: which side of the repair, what the thermostat did, how long the log ran, and how long after the car came. */
interface Drive {
  role: 'before' | 'after';
  fault: DriveFacts['fault'];
  minutes: number;
  daysLater: number;
}

const BEFORE: Drive = { role: 'before', fault: 'stuck-open', minutes: 30, daysLater: 0 };
const EARLY: Drive = { ...BEFORE, fault: 'opens-early' };
const AFTER: Drive = { role: 'after', fault: 'none', minutes: 26, daysLater: 1 };
const TOO_SHORT: Drive = { ...AFTER, minutes: 8 };
const PROVEN_JOBS = 8;
const DAY_MINUTES = 24 * 60;

/** Logs with their proof sheets for some jobs: proven ones, one that owes its log, one whose log was too short, one found by a diagnosis. */
export async function writeWarmUpLogs(
  tx: Tx,
  random: Random,
  { jobs, staff, workshop }: { jobs: readonly WrittenJob[]; staff: Staff; workshop: Workshop },
): Promise<void> {
  for (const { plan, drives } of drivesOf(jobs.map(({ plan: one }) => one)))
    await writeJobLogs(tx, random, { plan, drives, staff, workshop });
}

function drivesOf(plans: readonly JobPlan[]): { plan: JobPlan; drives: readonly Drive[] }[] {
  const of = (template: JobPlan['template'], chapter: JobPlan['chapter']): JobPlan[] =>
    plans.filter((plan) => plan.template === template && plan.chapter === chapter);
  const proven = of('thermostat', 'gone-and-checked').slice(-PROVEN_JOBS);
  const [owing, tooShort] = of('thermostat', 'gone');
  const [found] = of('diagnosis', 'gone-and-checked').slice(-1);
  return [
    ...proven.map((plan, index) => ({ plan, drives: [index % 3 === 2 ? EARLY : BEFORE, AFTER] })),
    ...(owing ? [{ plan: owing, drives: [BEFORE] }] : []),
    ...(tooShort ? [{ plan: tooShort, drives: [EARLY, TOO_SHORT] }] : []),
    ...(found ? [{ plan: found, drives: [EARLY] }] : []),
  ];
}

async function writeJobLogs(
  tx: Tx,
  random: Random,
  { plan, drives, staff, workshop }: { plan: JobPlan; drives: readonly Drive[]; staff: Staff; workshop: Workshop },
): Promise<void> {
  const job = toRunUpJob(await tx.job.findUniqueOrThrow({ where: { id: plan.id }, select: RUN_UP_JOB }));
  const airC = random.between(9, 19);
  const logs: KeptLog[] = [];
  const samplesOf = new Map<string, readonly Sample[]>();
  for (const [index, drive] of drives.entries()) {
    const nominalC = plan.car.model.engine.nominalC;
    const reading = readOrThrow(driveWarmUp(random, { fault: drive.fault, nominalC, airC, minutes: drive.minutes }));
    const { samples, shape } = reading;
    const log = keptLog(nextId(random), { plan, drive, reading, nominalC, staff });
    const { withdrawal: _, understood, analysis, ...row } = log;
    await tx.warmUpLog.create({
      data: {
        ...row,
        understood: understood as unknown as Prisma.InputJsonObject,
        analysis: analysis as unknown as Prisma.InputJsonObject,
        answers: {},
        vehicleId: plan.car.vehicleId,
        shape,
        samples: await packSamples(samples),
        verdict: analysis.verdict,
        confidence: analysis.confidence,
      },
    });
    logs.push(log);
    samplesOf.set(log.id, samples);
    const pair = pairOfLogs(logs);
    const { outcome } = compareLogs(pair.before?.analysis ?? null, pair.after?.analysis ?? null);
    const document = composeProof({ job, workshop, pair, samplesOf }) as unknown as Prisma.InputJsonObject;
    await tx.proofSheet.create({
      data: { id: nextId(random), jobId: plan.id, version: index + 1, outcome, document, madeAt: log.keptAt, madeById: staff.techId },
    });
  }
}

type ReadLog = Extract<LogReading, { ok: true }>;

function readOrThrow(text: string): ReadLog {
  const reading = readLog(text);
  if (!reading.ok) throw new Error(`The demo's log can't be read: ${reading.problem}`);
  return reading;
}

function keptLog(
  id: string,
  { plan, drive, reading, nominalC, staff }: { plan: JobPlan; drive: Drive; reading: ReadLog; nominalC: number; staff: Staff },
): KeptLog {
  const { samples, understood } = reading;
  const keptAt = laterBy(plan.arrivesAt, drive.daysLater * DAY_MINUTES + 60);
  return {
    id,
    jobId: plan.id,
    role: drive.role,
    source: 'file',
    fileName: `${plan.car.registration}-${drive.role}.csv`,
    understood,
    loggedOn: new Date(`${keptAt.toISOString().slice(0, 10)}T00:00:00Z`),
    thermostatKind: 'wax',
    nominalOpeningC: nominalC,
    heater: 'off',
    sampleCount: samples.length,
    analysis: analyseWarmUp({ samples, nominalOpeningC: nominalC, thermostatKind: 'wax', heater: 'off' }),
    keptById: staff.techId,
    keptAt,
    withdrawal: null,
  };
}
