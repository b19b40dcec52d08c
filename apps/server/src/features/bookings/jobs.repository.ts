import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface NewJob {
  customerId: string;
  vehicleId: string;
  templateId: string;
  complaint: string;
  complaintWhen: string;
  comebackOfId: string | null;
  createdAt: Date;
  createdById: string;
}

export interface Arrival {
  keyTag: number;
  odometerKm: number | null;
  leftInCar: string;
  arrivedAt: Date;
}

export interface TemplateChoice {
  id: string;
  key: string;
  name: string;
}

const ON_THE_PAGE = {
  customer: { select: { id: true, name: true, phone: true } },
  vehicle: true,
  template: { select: { key: true, name: true, definition: true } },
  comebackOf: { select: { id: true, number: true } },
  comebacks: { select: { id: true, number: true } },
  stageChanges: { orderBy: { id: 'asc' } },
  waits: { orderBy: { since: 'asc' } },
  debts: { orderBy: { openedAt: 'asc' } },
  bookings: { where: { calledOffAt: null }, orderBy: { startsAt: 'asc' }, include: { place: { select: { name: true } } } },
} as const;

const IN_A_LIST = {
  id: true,
  number: true,
  keyTag: true,
  stage: true,
  complaint: true,
  promisedAt: true,
  customer: { select: { name: true } },
  vehicle: { select: { registration: true, make: true, model: true } },
  template: { select: { name: true } },
  waits: { where: { endedAt: null }, orderBy: { since: 'asc' }, take: 1, select: { kind: true, words: true, since: true } },
  debts: { where: { endedAt: null }, select: { kind: true, dueOn: true } },
  bookings: {
    where: { calledOffAt: null },
    orderBy: { startsAt: 'asc' },
    select: { startsAt: true, endsAt: true, phase: true, place: { select: { name: true } } },
  },
} as const;

const GONE = ['keys-out', 'squared', 'fell-through'];

export type JobPageRow = NonNullable<Awaited<ReturnType<JobsRepository['forPage']>>>;
export type JobListRow = Awaited<ReturnType<JobsRepository['inTheHouse']>>[number];

@Injectable()
export class JobsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async forPage(id: string) {
    return this.prisma.db.job.findUnique({ where: { id }, include: ON_THE_PAGE });
  }

  /** The cars that stand here or are worked on, and those booked for the given day. */
  async inTheHouse({ from, to }: { from: Date; to: Date }) {
    return this.prisma.db.job.findMany({
      where: {
        OR: [
          { stage: { notIn: ['spoken-of', 'expected', ...GONE] } },
          {
            stage: { in: ['spoken-of', 'expected'] },
            bookings: { some: { calledOffAt: null, startsAt: { lt: to }, endsAt: { gt: from } } },
          },
        ],
      },
      orderBy: [{ keyTag: 'asc' }, { number: 'asc' }],
      select: IN_A_LIST,
    });
  }

  /** Gone cars with something still owed. */
  async withDebts(most: number) {
    return this.prisma.db.job.findMany({
      where: { stage: 'keys-out', debts: { some: { endedAt: null } } },
      orderBy: { number: 'desc' },
      take: most,
      select: IN_A_LIST,
    });
  }

  /** Holds the job's row until the transaction ends, so that what follows is decided on what is true. */
  async lock(tx: Tx, id: string): Promise<{ stage: string } | undefined> {
    const [row] = await tx.$queryRaw<{ stage: string }[]>`select stage from job where id = ${id}::uuid for update`;
    return row;
  }

  async create(tx: Tx, job: NewJob): Promise<string> {
    return (await tx.job.create({ data: job, select: { id: true } })).id;
  }

  async arrive(tx: Tx, id: string, arrival: Arrival): Promise<void> {
    await tx.job.update({ where: { id }, data: { ...arrival, version: { increment: 1 } } });
  }

  async callOffBookings(tx: Tx, jobId: string, at: Date): Promise<void> {
    await tx.booking.updateMany({ where: { jobId, calledOffAt: null }, data: { calledOffAt: at } });
  }

  async keyTagsOut(): Promise<number[]> {
    const rows = await this.prisma.db.job.findMany({ where: { keyTag: { not: null }, stage: { notIn: GONE } }, select: { keyTag: true } });
    return rows.flatMap(({ keyTag }) => (keyTag === null ? [] : [keyTag]));
  }

  /** The newest version of each template. */
  async templates(db: DbClient = this.prisma.db): Promise<TemplateChoice[]> {
    const rows = await db.jobTemplate.findMany({
      distinct: ['key'],
      orderBy: [{ key: 'asc' }, { version: 'desc' }],
      select: { id: true, key: true, name: true },
    });
    return rows;
  }
}
