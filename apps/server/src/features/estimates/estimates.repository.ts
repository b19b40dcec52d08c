import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface JobFacts {
  id: string;
  templateKey: string;
  customerName: string;
  car: string;
}

export interface Yes {
  id: string;
  saidBy: string;
  saidAt: Date;
  how: string;
  ceilingGross: string;
  oldPartBack: boolean;
  words: string;
  withdrawnAt: Date | null;
  packages: { id: string; name: string; gross: string }[];
}

export interface NewYes {
  jobId: string;
  saidBy: string;
  saidAt: Date;
  how: string;
  ceilingGross: string;
  oldPartBack: boolean;
  words: string;
  recordedById: string;
  recordedAt: Date;
  packages: readonly { name: string; gross: string }[];
}

@Injectable()
export class EstimatesRepository {
  constructor(private readonly prisma: PrismaService) {}

  async lockJob(tx: Tx, jobId: string): Promise<boolean> {
    const rows = await tx.$queryRaw<unknown[]>`select 1 from job where id = ${jobId}::uuid for update`;
    return rows.length > 0;
  }

  async job(id: string): Promise<JobFacts | undefined> {
    const row = await this.prisma.db.job.findUnique({
      where: { id },
      select: {
        template: { select: { key: true } },
        customer: { select: { name: true } },
        vehicle: { select: { make: true, model: true, registration: true } },
      },
    });
    if (!row) return undefined;
    const { make, model, registration } = row.vehicle;
    return { id, templateKey: row.template.key, customerName: row.customer.name, car: `${make} ${model}, ${registration}` };
  }

  /** In the order in which they were given. */
  async yeses(jobId: string, db: DbClient = this.prisma.db): Promise<Yes[]> {
    const rows = await db.authorisation.findMany({
      where: { jobId },
      orderBy: { saidAt: 'asc' },
      include: { packages: { include: { package: true }, orderBy: { package: { position: 'asc' } } } },
    });
    return rows.map((row) => ({
      ...row,
      ceilingGross: row.ceilingGross.toFixed(2),
      packages: row.packages.map(({ package: { id, name, grossHigh } }) => ({ id, name, gross: grossHigh.toFixed(2) })),
    }));
  }

  async add(tx: Tx, { packages, ...yes }: NewYes): Promise<string> {
    const before = await tx.workPackage.count({ where: { jobId: yes.jobId } });
    const authorisation = await tx.authorisation.create({ data: yes, select: { id: true } });
    for (const [index, { name, gross }] of packages.entries()) {
      await tx.workPackage.create({
        data: {
          jobId: yes.jobId,
          position: before + index + 1,
          name,
          grossLow: gross,
          grossHigh: gross,
          authorised: { create: { authorisationId: authorisation.id } },
        },
      });
    }
    return authorisation.id;
  }
}
