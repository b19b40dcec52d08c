import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

@Injectable()
export class ReleaseRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** Jobs whose variant is chosen and that still have pieces set aside. */
  async jobsDecided(): Promise<string[]> {
    const rows = await this.prisma.db.job.findMany({
      where: { choice: { isNot: null }, units: { some: { place: 'set-aside' } } },
      select: { id: true },
    });
    return rows.map(({ id }) => id);
  }

  async chosenVariant(tx: Tx, jobId: string): Promise<string | undefined> {
    return (await tx.fitmentChoice.findUnique({ where: { jobId }, select: { variantId: true } }))?.variantId;
  }

  /** Pieces of the job that a person took off the way back. */
  async keptIds(tx: Tx, jobId: string): Promise<Set<string>> {
    const rows = await tx.unitMove.findMany({
      where: { unit: { jobId }, from: 'to-return', to: 'set-aside', byId: { not: null } },
      select: { unitId: true },
    });
    return new Set(rows.map(({ unitId }) => unitId));
  }
}
