import { Injectable } from '@nestjs/common';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import { VehicleFacts } from '../../customers/vehicle-facts.service.ts';
import { JobCards, type OpenCard } from '../../job-cards/job-cards.service.ts';
import { noFact } from '../coolant.errors.ts';
import type { VehicleFactDto } from '../dto/vehicle-fact.dto.ts';
import { CardPeopleRepository } from './card-people.repository.ts';
import { FACT_KEYS } from './fact-keys.ts';
import type { JobFacts } from './known-figures.ts';
import { readFact } from './read-fact.ts';

/** The bench opened for a job: what its card and its car's memory say. */
@Injectable()
export class JobBenchService {
  constructor(
    private readonly cards: JobCards,
    private readonly facts: VehicleFacts,
    private readonly people: CardPeopleRepository,
    private readonly unitOfWork: UnitOfWork,
  ) {}

  async open(jobId: string): Promise<{ row: OpenCard['row']; job: JobFacts }> {
    const { row, state } = await this.cards.open(jobId);
    const [facts, names] = await Promise.all([this.facts.of(row.vehicleId, FACT_KEYS), this.people.names()]);
    return { row, job: { state, facts, names } };
  }

  async state(jobId: string, input: VehicleFactDto): Promise<void> {
    const { row } = await this.cards.open(jobId);
    const { vehicleId } = row;
    const fact = { vehicleId, jobId, key: input.key, ...readFact(input), source: input.source };
    await this.unitOfWork.run((tx) => this.facts.state(tx, fact));
  }

  async withdraw(jobId: string, id: string, why: string): Promise<void> {
    const { row } = await this.cards.open(jobId);
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.facts.withdraw(tx, { id, vehicleId: row.vehicleId, why }))) throw noFact();
      return id;
    });
  }
}
