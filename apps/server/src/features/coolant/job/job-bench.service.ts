import { Injectable } from '@nestjs/common';
import { Audit } from '../../../platform/audit.ts';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import { JobCards, type OpenCard } from '../../job-cards/job-cards.service.ts';
import { noFact } from '../coolant.errors.ts';
import type { VehicleFactDto } from '../dto/vehicle-fact.dto.ts';
import { CardPeopleRepository } from './card-people.repository.ts';
import type { JobFacts } from './known-figures.ts';
import { readFact } from './read-fact.ts';
import { VehicleFactsRepository } from './vehicle-facts.repository.ts';

/** The bench opened for a job: what its card and its car's memory say. */
@Injectable()
export class JobBenchService {
  constructor(
    private readonly cards: JobCards,
    private readonly facts: VehicleFactsRepository,
    private readonly people: CardPeopleRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async open(jobId: string): Promise<{ row: OpenCard['row']; job: JobFacts }> {
    const { row, state } = await this.cards.open(jobId);
    const [facts, names] = await Promise.all([this.facts.of(row.vehicleId), this.people.names()]);
    return { row, job: { state, facts, names } };
  }

  /** Keeps a statement beside what was stated before, never over it. */
  async state(jobId: string, input: VehicleFactDto): Promise<void> {
    const { row } = await this.cards.open(jobId);
    const fact = readFact(input);
    await this.unitOfWork.run(async (tx) => {
      const { vehicleId } = row;
      const record = { vehicleId, jobId, key: input.key, ...fact, source: input.source };
      const id = await this.facts.add(tx, { ...record, enteredById: currentStaff().staffId, enteredAt: this.clock.now() });
      await this.audit.record(tx, { action: 'stated', subject: 'vehicle-fact', subjectId: id, after: record });
      return id;
    });
  }

  /** Takes a statement out of use: it stays on record with the reason. */
  async withdraw(jobId: string, id: string, why: string): Promise<void> {
    const { row } = await this.cards.open(jobId);
    await this.unitOfWork.run(async (tx) => {
      const isDone = await this.facts.withdraw(tx, { id, vehicleId: row.vehicleId, at: this.clock.now(), why });
      if (!isDone) throw noFact();
      await this.audit.record(tx, { action: 'withdrawn', subject: 'vehicle-fact', subjectId: id, after: { why } });
      return id;
    });
  }
}
