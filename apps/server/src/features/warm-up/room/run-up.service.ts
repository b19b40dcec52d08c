import { Injectable } from '@nestjs/common';
import type { Sample } from '#libs/warm-up';
import { Audit } from '../../../platform/audit.ts';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import type { GaugeLookDto } from '../dto/gauge-look.dto.ts';
import { DraftsRepository } from '../keeping/drafts.repository.ts';
import { type GaugeLook, GaugeLooksRepository } from '../keeping/gauge-looks.repository.ts';
import { type KeptLog, LogsRepository } from '../keeping/logs.repository.ts';
import type { ProofSheet } from '../keeping/proof-sheets.repository.ts';
import { type RunUpJob, type RunUpJobRow, RunUpJobsRepository } from '../keeping/run-up-jobs.repository.ts';
import { type LogPair, pairOfLogs } from '../proof/pair-of-logs.ts';
import { ProofService } from '../proof/proof.service.ts';
import { noRunUpJob, noWarmUpLog, withdrawnAlready } from '../warm-up.errors.ts';

const LATELY_MS = 60 * 24 * 3_600_000;

/** What the page of a job shows. */
export interface JobRunUp {
  job: RunUpJob;
  logs: readonly KeptLog[];
  pair: LogPair;
  samplesOf: ReadonlyMap<string, readonly Sample[]>;
  looks: readonly GaugeLook[];
  sheets: readonly ProofSheet[];
  drafts: readonly { id: string; fileName: string; uploadedAt: Date }[];
  /** The newest log of this car's other jobs that tells something. */
  lastVisit: { log: KeptLog; jobNumber: number } | null;
  names: ReadonlyMap<string, string>;
  now: Date;
  timeZone: string;
}

@Injectable()
export class RunUp {
  constructor(
    private readonly jobs: RunUpJobsRepository,
    private readonly logs: LogsRepository,
    private readonly looks: GaugeLooksRepository,
    private readonly drafts: DraftsRepository,
    private readonly proof: ProofService,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async jobList(): Promise<RunUpJobRow[]> {
    return this.jobs.list(new Date(this.clock.now().getTime() - LATELY_MS));
  }

  async ofJob(id: string): Promise<JobRunUp> {
    const job = await this.jobs.find(id);
    if (!job) throw noRunUpJob();
    const [logs, looks, sheets, drafts, earlier, names, { timeZone }] = await Promise.all([
      this.logs.ofJob(id),
      this.looks.ofJob(id),
      this.proof.ofJob(id),
      this.drafts.ofJob(id),
      this.logs.ofVehicleBefore(job.vehicleId, id),
      this.jobs.staffNames(),
      this.workshop.get(),
    ]);
    const pair = pairOfLogs(logs);
    const { before, after } = pairOfLogs(earlier.toReversed());
    const last = after ?? before;
    const jobNumber = earlier.find((log) => log.id === last?.id)?.jobNumber;
    return {
      job,
      logs,
      looks,
      sheets,
      drafts,
      names,
      timeZone,
      pair,
      samplesOf: await this.proof.samplesOf(pair),
      lastVisit: last && jobNumber !== undefined ? { log: last, jobNumber } : null,
      now: this.clock.now(),
    };
  }

  async log(id: string): Promise<{ log: KeptLog; job: RunUpJob; samples: Sample[]; names: ReadonlyMap<string, string> }> {
    const log = await this.logs.find(id);
    const job = log && (await this.jobs.find(log.jobId));
    if (!job) throw noWarmUpLog();
    const [samples, names] = await Promise.all([this.logs.samples(id), this.jobs.staffNames()]);
    return { log, job, samples, names };
  }

  /** It stays on record and no longer counts. @returns the job's id */
  async withdraw(id: string, why: string): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      const log = await this.logs.find(id, tx);
      if (!log) throw noWarmUpLog();
      await this.jobs.lock(tx, log.jobId);
      const isFirst = await this.logs.withdraw(tx, id, { why, byId: currentStaff().staffId, at: this.clock.now() });
      if (!isFirst) throw withdrawnAlready();
      await this.proof.forgo(tx, log.jobId, { logId: id, why });
      await this.audit.record(tx, { action: 'withdrawn', subject: 'warm-up-log', subjectId: id, after: { why } });
      return log.jobId;
    });
  }

  async look(jobId: string, { reading, minutesDriven, outsideC, gaugeRole }: GaugeLookDto): Promise<void> {
    if (!(await this.jobs.find(jobId))) throw noRunUpJob();
    const at = this.clock.now();
    const outside = outsideC === '' ? {} : { outsideC: Number(outsideC.replace('\u2212', '-')) };
    await this.unitOfWork.run(async (tx) => {
      await this.looks.add(tx, jobId, {
        role: gaugeRole,
        observation: { reading, minutesDriven: Math.min(600, Number(minutesDriven)), ...outside },
        lookedOn: at,
        keptById: currentStaff().staffId,
        at,
      });
      await this.audit.record(tx, { action: 'looked', subject: 'gauge', subjectId: jobId, after: { reading } });
      return null;
    });
  }
}
