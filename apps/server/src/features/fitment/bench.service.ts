import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { comparison, type ComparisonAnswer, type PartFamily } from '#libs/fitment';
import type { DbClient, Tx } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { Units } from '../returns/units.service.ts';
import { benchQuestion } from './bench-question.ts';
import { type BenchCandidate, type BenchJob, type BenchReading, BenchRepository, type OpenJob } from './bench.repository.ts';
import type { ChoiceDto } from './dto/choice.dto.ts';
import type { ReadingDto } from './dto/reading.dto.ts';
import { excluded, jobIsOver, noCandidate, noJob, takenBackAlready } from './fitment.errors.ts';
import { readingOf } from './reading-of.ts';

const FAMILY = 'thermostat';
const GONE = new Set(['keys-out', 'squared', 'fell-through']);

export interface Bench {
  job: BenchJob;
  family: PartFamily;
  candidates: BenchCandidate[];
  readings: BenchReading[];
  /** Undefined while there is nothing to compare. */
  answer: ComparisonAnswer | undefined;
}

/** The removed part and its candidates side by side: readings in, ranking out, and the choice that opens the hold point. */
@Injectable()
export class BenchService {
  constructor(
    private readonly bench: BenchRepository,
    private readonly cards: JobCards,
    private readonly units: Units,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  openJobs(): Promise<OpenJob[]> {
    return this.bench.openJobs();
  }

  async open(jobId: string, db?: DbClient): Promise<Bench> {
    const job = await this.bench.job(jobId, db);
    const family = await this.bench.family(FAMILY, db);
    if (!job || !family) throw noJob();
    const candidates = await this.bench.candidates(jobId, job.engineCode, db);
    const readings = await this.bench.readings(jobId, db);
    if (candidates.length === 0) return { job, family, candidates, readings, answer: undefined };
    const history = await this.bench.history(job, this.clock.now(), db);
    const instruments = await this.bench.instruments(db);
    return { job, family, candidates, readings, answer: comparison(benchQuestion({ family, candidates, readings, instruments, history })) };
  }

  async read(jobId: string, input: ReadingDto): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const { family } = await this.stillOpen(jobId, tx);
      const reading = readingOf(family, input);
      await this.bench.addReading(tx, { jobId, readById: currentStaff().staffId, readAt: this.clock.now(), ...reading });
      return null;
    });
  }

  async takeBack(jobId: string, readingId: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      await this.stillOpen(jobId, tx);
      if (!(await this.bench.withdrawReading(tx, { id: readingId, jobId, at: this.clock.now() }))) throw takenBackAlready();
      return null;
    });
  }

  /** The technician confirms: the choice becomes the workshop's knowledge of this engine, its piece is fitted, the hold point passed. */
  async choose(jobId: string, { variantId, basis }: ChoiceDto): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const { job, candidates, answer } = await this.stillOpen(jobId, tx);
      const candidate = candidates.find(({ id }) => id === variantId);
      const ranked = answer?.ranking.find(({ id }) => id === variantId);
      if (!candidate || !ranked) throw noCandidate();
      if (ranked.verdict === 'excluded') throw excluded(candidate.partNumber);
      const { staffId } = currentStaff();
      const chosenAt = this.clock.now();
      const probability = ranked.groupProbability;
      await this.bench.choose(tx, {
        jobId,
        variantId,
        engineCode: job.engineCode,
        probability,
        evidence: { basis },
        chosenById: staffId,
        chosenAt,
      });
      await this.fit(tx, candidate, candidates);
      const action = { card: jobId, step: 'variant', readAt: chosenAt.toISOString(), by: staffId, byProof: 'session' } as const;
      await this.cards.recordIn(tx, jobId, [
        { ...action, id: randomUUID(), kind: 'pass', value: { variant: candidate.partNumber, basis } },
      ]);
      await this.audit.record(tx, { action: 'chosen', subject: 'fitment', subjectId: jobId, after: { variantId, basis, probability } });
      return null;
    });
  }

  /** The piece that lies here leaves its box for the engine; one still on its way is fitted when it comes. */
  private async fit(tx: Tx, chosen: BenchCandidate, candidates: readonly BenchCandidate[]): Promise<void> {
    const { unit } = chosen;
    for (const other of candidates) if (other !== chosen && other.unit?.place === 'fitted') await this.setAsideAgain(tx, other.unit.id);
    if (unit?.place !== 'set-aside') return;
    const piece = await this.units.hold(tx, unit.id);
    await this.units.open(tx, piece);
    await this.units.move(tx, piece, { to: 'fitted', why: 'Settled on the bench' });
  }

  /** Another was settled on: this one is not billed, and can go back or be kept. */
  private async setAsideAgain(tx: Tx, unitId: string): Promise<void> {
    for (const to of ['taken-out', 'set-aside'] as const)
      await this.units.move(tx, await this.units.hold(tx, unitId), { to, why: 'Another variant was settled on' });
  }

  private async stillOpen(jobId: string, tx: Tx): Promise<Bench> {
    const bench = await this.open(jobId, tx);
    if (GONE.has(bench.job.stage)) throw jobIsOver();
    return bench;
  }
}
