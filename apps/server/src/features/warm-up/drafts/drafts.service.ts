import { Injectable } from '@nestjs/common';
import { readLog, readTypedReadings, type WarmUpAnalysis, withoutPlaces } from '#libs/warm-up';
import { Audit } from '../../../platform/audit.ts';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import type { UploadedFile } from '../../../platform/uploads/request-files.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import { isoDay } from '../../../web/dates.ts';
import { analyse } from '../analysis-request/analyse.ts';
import type { DraftDto } from '../dto/draft.dto.ts';
import type { LogSettingDto } from '../dto/log-setting.dto.ts';
import { type Draft, DraftsRepository } from '../keeping/drafts.repository.ts';
import { LogsRepository } from '../keeping/logs.repository.ts';
import { type RunUpJob, RunUpJobsRepository } from '../keeping/run-up-jobs.repository.ts';
import { decodeLog } from '../log-file/decode-log.ts';
import { ProofService } from '../proof/proof.service.ts';
import { badLogForm, notReadYet, noDraft, noRunUpJob } from '../warm-up.errors.ts';
import { type DraftReading, readDraft } from './read-draft.ts';
import { answersOf, settingOf } from './setting-of.ts';

export interface OpenDraft {
  draft: Draft;
  job: RunUpJob;
  reading: DraftReading;
  /** The same file without anybody's answers. */
  asTheFileSays: DraftReading;
  analysis: WarmUpAnalysis | null;
}

/** A log between its upload and its place in the record: read, shown, corrected, kept or thrown away. */
@Injectable()
export class Drafts {
  constructor(
    private readonly drafts: DraftsRepository,
    private readonly logs: LogsRepository,
    private readonly jobs: RunUpJobsRepository,
    private readonly proof: ProofService,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** @returns the draft's id */
  async take(jobId: string, input: LogSettingDto, file: UploadedFile | undefined): Promise<string> {
    if (!(await this.jobs.find(jobId))) throw noRunUpJob();
    const { source, fileName, text, shape } = file ? readFile(file) : readTyped(input.readings);
    const answers = (await this.drafts.answersFor(shape)) ?? {};
    const setting = settingOf(input, { today: await this.today(), answers });
    return this.unitOfWork.run(async (tx) =>
      this.drafts.create(tx, {
        jobId,
        source,
        fileName,
        text,
        setting,
        uploadedById: currentStaff().staffId,
        uploadedAt: this.clock.now(),
      }),
    );
  }

  async open(id: string): Promise<OpenDraft> {
    const draft = await this.drafts.find(id);
    const job = draft && (await this.jobs.find(draft.jobId));
    if (!job) throw noDraft();
    const reading = readDraft(draft);
    const isAnswered = Object.keys(draft.setting.answers).length > 0;
    const asTheFileSays = isAnswered ? readDraft({ ...draft, setting: { ...draft.setting, answers: {} } }) : reading;
    return { draft, job, reading, asTheFileSays, analysis: reading.ok ? analysisOf(draft, reading) : null };
  }

  /** Reads it again with what was answered. */
  async correct(id: string, input: DraftDto): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const draft = await this.drafts.find(id, tx);
      if (!draft) throw noDraft();
      await this.drafts.change(tx, id, await this.corrected(draft, input));
      return null;
    });
  }

  /** Puts it into the record of its job and car, judged. @returns the job's id */
  async keep(id: string, input: DraftDto): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      const found = await this.drafts.find(id, tx);
      const job = found && (await this.jobs.find(found.jobId, tx));
      if (!job) throw noDraft();
      const draft = await this.corrected(found, input);
      const reading = readDraft(draft);
      if (!reading.ok) throw notReadYet(draft.source, reading);
      await this.jobs.lock(tx, job.id);
      const { answers, loggedOn, ...setting } = draft.setting;
      const [byId, at] = [currentStaff().staffId, this.clock.now()];
      const analysis = analysisOf(draft, reading);
      const logId = await this.logs.add(tx, {
        ...setting,
        answers,
        jobId: job.id,
        vehicleId: job.vehicleId,
        source: draft.source,
        fileName: draft.fileName,
        shape: reading.shape,
        understood: reading.understood,
        samples: reading.samples,
        loggedOn: new Date(`${loggedOn}T00:00:00Z`),
        analysis,
        keptById: byId,
        keptAt: at,
      });
      if (draft.source === 'file' && Object.keys(answers).length > 0) await this.drafts.remember(tx, reading.shape, { answers, byId, at });
      await this.drafts.remove(tx, id);
      await this.proof.follow(tx, job.id);
      await this.audit.record(tx, {
        action: 'kept',
        subject: 'warm-up-log',
        subjectId: logId,
        after: { jobId: job.id, role: setting.role, verdict: analysis.verdict },
      });
      return job.id;
    });
  }

  /** @returns the job's id */
  async discard(id: string): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      const draft = await this.drafts.find(id, tx);
      if (!draft || !(await this.drafts.remove(tx, id))) throw noDraft();
      return draft.jobId;
    });
  }

  private async corrected(draft: Draft, input: DraftDto): Promise<Draft> {
    const setting = settingOf(input, { today: await this.today(), answers: draft.source === 'file' ? answersOf(input) : {} });
    return { ...draft, setting, text: draft.source === 'typed' ? input.readings : draft.text };
  }

  private async today(): Promise<string> {
    const { timeZone } = await this.workshop.get();
    return isoDay(this.clock.now(), timeZone);
  }
}

interface Taken {
  source: Draft['source'];
  fileName: string;
  text: string;
  shape: string;
}

/** A file that is no log is refused; one that leaves questions is taken, and asked. */
function readFile({ name, bytes }: UploadedFile): Taken {
  const text = decodeLog(bytes);
  const reading = readLog(text);
  if (!reading.ok && reading.asks.length === 0) throw badLogForm([{ field: 'file', message: reading.problem }]);
  return { source: 'file', fileName: name, text: withoutPlaces(text), shape: reading.shape };
}

function readTyped(readings: string): Taken {
  if (readings === '') throw badLogForm([{ field: 'file', message: 'Choose the logger’s file, or type readings below.' }]);
  const typed = readTypedReadings(readings);
  if (!typed.ok) throw badLogForm([{ field: 'readings', message: typed.problem }]);
  return { source: 'typed', fileName: '', text: readings, shape: 'typed' };
}

function analysisOf({ setting }: Draft, { samples }: DraftReading & { ok: true }): WarmUpAnalysis {
  const { thermostatKind, heater, nominalOpeningC } = setting;
  return analyse({ samples, thermostatKind, heater, ...(nominalOpeningC === null ? {} : { nominalOpeningC }) });
}
