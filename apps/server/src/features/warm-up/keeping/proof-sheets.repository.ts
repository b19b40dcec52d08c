import { Injectable } from '@nestjs/common';
import type { Outcome } from '#libs/warm-up';
import type { DbClient, Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import type { ProofDocument } from '../proof/proof-document.ts';

export interface ProofSheet {
  id: string;
  jobId: string;
  version: number;
  outcome: Outcome;
  madeAt: Date;
}

const HEAD = { id: true, jobId: true, version: true, outcome: true, madeAt: true } as const;

@Injectable()
export class ProofSheetsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async add(tx: Tx, { document, ...sheet }: Omit<ProofSheet, 'id'> & { document: ProofDocument; madeById: string }): Promise<void> {
    await tx.proofSheet.create({ data: { ...sheet, document: document as unknown as Prisma.InputJsonObject } });
  }

  /** The newest first. */
  async ofJob(jobId: string, db: DbClient = this.prisma.db): Promise<ProofSheet[]> {
    const rows = await db.proofSheet.findMany({ where: { jobId }, orderBy: { version: 'desc' }, select: HEAD });
    return rows.map((row) => ({ ...row, outcome: row.outcome as Outcome }));
  }

  async document(id: string, db: DbClient = this.prisma.db): Promise<(ProofSheet & { document: ProofDocument }) | undefined> {
    const row = await db.proofSheet.findUnique({ where: { id }, select: { ...HEAD, document: true } });
    return row ? { ...row, outcome: row.outcome as Outcome, document: row.document as unknown as ProofDocument } : undefined;
  }

  async file(sheetId: string): Promise<Uint8Array | undefined> {
    return (await this.prisma.db.proofSheetFile.findUnique({ where: { sheetId }, select: { bytes: true } }))?.bytes;
  }

  /** The first one stays: whoever printed at the same moment gets it too. */
  async keepFile(file: { sheetId: string; bytes: Uint8Array<ArrayBuffer>; sha256: string; madeAt: Date }): Promise<void> {
    await this.prisma.db.proofSheetFile.createMany({ data: [file], skipDuplicates: true });
  }
}
