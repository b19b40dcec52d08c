import { Injectable } from '@nestjs/common';
import { PrismaService } from '../../../platform/database.ts';

/** A car in the house whose coolant somebody may be at. */
export interface BenchJob {
  id: string;
  number: number;
  keyTag: number | null;
  vehicle: { make: string; model: string; registration: string };
}

const IN_THE_HOUSE = ['standing', 'opened', 'closed-up', 'filled', 'run-hot', 'settling', 'settled'];
const MOST = 40;

@Injectable()
export class BenchJobsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async inTheHouse(): Promise<BenchJob[]> {
    return this.prisma.db.job.findMany({
      where: { stage: { in: IN_THE_HOUSE } },
      orderBy: [{ keyTag: 'asc' }, { number: 'asc' }],
      take: MOST,
      select: { id: true, number: true, keyTag: true, vehicle: { select: { make: true, model: true, registration: true } } },
    });
  }
}
