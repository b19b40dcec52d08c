import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface ReturnNoteRow {
  id: string;
  number: number;
  madeAt: Date;
  madeById: string;
  handedOverAt: Date | null;
  evidence: string;
  supplier: { id: string; name: string; accountNumber: string; phone: string; email: string };
  unitIds: string[];
}

const WHOLE = {
  supplier: { select: { id: true, name: true, accountNumber: true, phone: true, email: true } },
  units: { select: { unitId: true } },
} as const;

@Injectable()
export class ReturnNotesRepository {
  constructor(private readonly prisma: PrismaService) {}

  async find(id: string, db: DbClient = this.prisma.db): Promise<ReturnNoteRow | undefined> {
    return (await this.many({ id }, db))[0];
  }

  /** Made and not left yet. */
  waiting(): Promise<ReturnNoteRow[]> {
    return this.many({ handedOverAt: null }, this.prisma.db);
  }

  ofUnit(unitId: string): Promise<ReturnNoteRow[]> {
    return this.many({ units: { some: { unitId } } }, this.prisma.db);
  }

  private async many(where: object, db: DbClient): Promise<ReturnNoteRow[]> {
    const rows = await db.returnNote.findMany({ where, include: WHOLE, orderBy: { number: 'desc' } });
    return rows.map(({ units, ...row }) => ({ ...row, unitIds: units.map(({ unitId }) => unitId) }));
  }

  async create(tx: Tx, note: { supplierId: string; madeAt: Date; madeById: string }, unitIds: readonly string[]): Promise<string> {
    const data = { ...note, units: { create: unitIds.map((unitId) => ({ unitId })) } };
    return (await tx.returnNote.create({ data, select: { id: true } })).id;
  }

  /** @returns whether it had not left before. */
  async leave(tx: Tx, id: string, { at, evidence }: { at: Date; evidence: string }): Promise<boolean> {
    const { count } = await tx.returnNote.updateMany({ where: { id, handedOverAt: null }, data: { handedOverAt: at, evidence } });
    return count === 1;
  }
}
