import { Injectable } from '@nestjs/common';
import type { DbClient } from '#libs/db';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { type Draft, draftOf } from './draft-of.ts';
import { noJob } from './invoices.errors.ts';
import { JobBillRepository } from './job-bill.repository.ts';

/** The draft is never stored: it is computed from the job, with the desk's changes laid over it. */
@Injectable()
export class DraftsService {
  constructor(
    private readonly bills: JobBillRepository,
    private readonly cards: JobCards,
    private readonly workshop: WorkshopFacts,
  ) {}

  async draft(jobId: string, db?: DbClient): Promise<Draft> {
    const facts = await this.bills.facts(jobId, db);
    const workshop = await this.workshop.get(db);
    if (!facts) throw noJob();
    const { state: card } = await this.cards.open(jobId, db);
    return draftOf({ facts, card, workshop });
  }
}
