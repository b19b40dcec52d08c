import { Injectable } from '@nestjs/common';
import { Decimal, sumAmounts } from '#libs/money';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { instantAt } from '../../web/dates.ts';
import { PACKAGE_ROWS, type YesDto } from './dto/yes.dto.ts';
import { ceilingTooLow, noJob, noSuchTime, nothingSaidYesTo, packageIncomplete, saidInFuture } from './estimates.errors.ts';
import { EstimatesRepository, type JobFacts, type Yes } from './estimates.repository.ts';

const amount = (typed: string): string => typed.replace(',', '.');

function packagesOf(input: YesDto): { name: string; gross: string }[] {
  return PACKAGE_ROWS.flatMap((row) => {
    if (input[`yes${row}`] !== 'on') return [];
    const name = input[`name${row}`];
    const gross = amount(input[`gross${row}`]);
    if (name === '') throw packageIncomplete(`name${row}`, 'Say what this package is.');
    if (gross === '') throw packageIncomplete(`gross${row}`, 'Give the price with tax that was told to the customer.');
    return [{ name, gross }];
  });
}

@Injectable()
export class EstimatesService {
  constructor(
    private readonly estimates: EstimatesRepository,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  yeses(jobId: string): Promise<Yes[]> {
    return this.estimates.yeses(jobId);
  }

  async job(id: string): Promise<JobFacts> {
    const job = await this.estimates.job(id);
    if (!job) throw noJob();
    return job;
  }

  async recordYes(jobId: string, input: YesDto): Promise<void> {
    const packages = packagesOf(input);
    if (packages.length === 0) throw nothingSaidYesTo();
    const sum = sumAmounts(packages.map(({ gross }) => gross));
    const ceilingGross = amount(input.ceiling);
    if (new Decimal(ceilingGross).lt(sum)) throw ceilingTooLow(new Decimal(sum).toFixed(2));
    const { timeZone } = await this.workshop.get();
    const saidAt = instantAt(input.saidDay, input.saidTime, timeZone);
    if (!saidAt) throw noSuchTime();
    const recordedAt = this.clock.now();
    if (saidAt.getTime() > recordedAt.getTime() + 60_000) throw saidInFuture();
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.estimates.lockJob(tx, jobId))) throw noJob();
      const { saidBy, how, words } = input;
      const id = await this.estimates.add(tx, {
        jobId,
        saidBy,
        saidAt,
        how,
        ceilingGross,
        oldPartBack: input.oldPartBack === 'on',
        words,
        recordedById: currentStaff().staffId,
        recordedAt,
        packages,
      });
      await this.audit.record(tx, {
        action: 'recorded',
        subject: 'yes',
        subjectId: id,
        after: { jobId, how, ceilingGross, packages },
        personal: { saidBy },
      });
      return null;
    });
  }
}

export type { Yes } from './estimates.repository.ts';
