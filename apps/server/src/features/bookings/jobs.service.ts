import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Action, Phase, Template } from '#libs/checklist';
import { violatedConstraint } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { MOST_ROWS } from '../../platform/paging.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { VehiclesService } from '../customers/vehicles.service.ts';
import { JobAccount } from '../job-cards/job-account.service.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { JobStages } from '../job-cards/job-stages.service.ts';
import { hereAlready, noJob, notOnTheList, tagTaken } from './bookings.errors.ts';
import type { ArrivalDto } from './dto/arrival.dto.ts';
import type { EndDebtDto } from './dto/end-debt.dto.ts';
import type { TakeComplaintDto } from './dto/take-complaint.dto.ts';
import { type JobListRow, type JobPageRow, JobsRepository, type TemplateChoice } from './jobs.repository.ts';

/** The car is not here yet. */
const IS_AHEAD = new Set(['spoken-of', 'expected']);

@Injectable()
export class JobsService {
  constructor(
    private readonly jobs: JobsRepository,
    private readonly vehicles: VehiclesService,
    private readonly cards: JobCards,
    private readonly stages: JobStages,
    private readonly account: JobAccount,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** The job with the phases of its template, for booking them. */
  async withPhases(id: string): Promise<{ job: JobPageRow; phases: readonly Phase[] }> {
    const job = await this.jobs.forPage(id);
    if (!job) throw noJob();
    return { job, phases: (job.template.definition as unknown as Template).phases };
  }

  /** Who stands here today, who is expected, and what gone cars still owe. */
  async ofDay(day: { from: Date; to: Date }): Promise<{ here: JobListRow[]; owing: JobListRow[] }> {
    const [here, owing] = await Promise.all([this.jobs.inTheHouse(day), this.jobs.withDebts(MOST_ROWS)]);
    return { here, owing };
  }

  templates(): Promise<TemplateChoice[]> {
    return this.jobs.templates();
  }

  /** @returns the new job's id. */
  async takeComplaint(vehicleId: string, input: TakeComplaintDto): Promise<string> {
    const vehicle = await this.vehicles.withHistory(vehicleId);
    if (input.comebackOf !== undefined && !vehicle.jobs.some(({ id }) => id === input.comebackOf)) throw notOnTheList('comebackOf');
    return this.unitOfWork.run(async (tx) => {
      const template = (await this.jobs.templates(tx)).find(({ key }) => key === input.template);
      if (!template) throw notOnTheList('template');
      const id = await this.jobs.create(tx, {
        customerId: vehicle.customerId,
        vehicleId,
        templateId: template.id,
        complaint: input.complaint,
        complaintWhen: input.complaintWhen,
        comebackOfId: input.comebackOf ?? null,
        createdAt: this.clock.now(),
        createdById: currentStaff().staffId,
      });
      await this.audit.record(tx, { action: 'taken', subject: 'job', subjectId: id, after: { template: template.key } });
      return id;
    });
  }

  /** The car stands here: tag on the board, odometer and belongings noted. */
  async arrive(id: string, input: ArrivalDto): Promise<void> {
    const keyTag = Number(input.keyTag);
    try {
      await this.unitOfWork.run(async (tx) => {
        const job = await this.jobs.lock(tx, id);
        if (!job) throw noJob();
        if (!IS_AHEAD.has(job.stage)) throw hereAlready();
        const odometerKm = input.odometerKm === '' ? null : Number(input.odometerKm);
        await this.jobs.arrive(tx, id, { keyTag, odometerKm, leftInCar: input.leftInCar, arrivedAt: this.clock.now() });
        await this.cards.recordIn(tx, id, this.arrivalActions(id, odometerKm));
        return null;
      });
    } catch (error) {
      if (violatedConstraint(error) === 'job_one_car_per_key_tag') throw tagTaken(keyTag);
      throw error;
    }
  }

  /** Taking a car in is the first step of its card, whoever does it. */
  private arrivalActions(jobId: string, odometerKm: number | null): Action[] {
    const action = { card: jobId, readAt: this.clock.now().toISOString(), by: currentStaff().staffId, byProof: 'session' } as const;
    const tagged: Action = { ...action, id: randomUUID(), kind: 'tick', step: 'keys-tagged', value: null };
    if (odometerKm === null) return [tagged];
    return [tagged, { ...action, id: randomUUID(), kind: 'record', step: 'odometer', value: { value: odometerKm } }];
  }

  /** The customer never came. */
  async fellThrough(id: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const job = await this.jobs.lock(tx, id);
      if (!job) throw noJob();
      await this.stages.move(tx, { jobId: id, from: job.stage, to: 'fell-through' });
      await this.jobs.callOffBookings(tx, id, this.clock.now());
      return null;
    });
  }

  /** @returns the job's id. */
  async endDebt(debtId: string, input: EndDebtDto): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      const jobId = await this.account.endDebt(tx, debtId, input);
      await this.audit.record(tx, { action: input.ending, subject: 'debt', subjectId: debtId, after: { jobId, why: input.why } });
      return jobId;
    });
  }

  /** The lowest number whose tag hangs on the board. */
  async nextKeyTag(): Promise<number> {
    const out = new Set(await this.jobs.keyTagsOut());
    let tag = 1;
    while (out.has(tag)) tag += 1;
    return tag;
  }
}
