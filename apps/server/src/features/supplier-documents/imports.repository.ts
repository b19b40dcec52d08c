import { Injectable } from '@nestjs/common';
import type { DbClient, Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import type { FileReading } from './csv/file-reading.types.ts';

export type ImportKind = 'credit-lines' | 'statement';

export interface ImportRow {
  id: string;
  kind: ImportKind;
  fileName: string;
  sha256: string;
  bytes: Uint8Array;
  reading: FileReading;
  supplier: { id: string; name: string };
  uploadedAt: Date;
  committedAt: Date | null;
}

export interface NewImport {
  supplierId: string;
  kind: ImportKind;
  fileName: string;
  sha256: string;
  bytes: Uint8Array<ArrayBuffer>;
  reading: FileReading;
  uploadedAt: Date;
  uploadedById: string;
}

const json = (reading: FileReading): Prisma.InputJsonObject => reading as unknown as Prisma.InputJsonObject;

@Injectable()
export class ImportsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async find(id: string, db: DbClient = this.prisma.db): Promise<ImportRow | undefined> {
    const row = await db.supplierImport.findUnique({ where: { id }, include: { supplier: { select: { id: true, name: true } } } });
    if (!row) return undefined;
    return { ...row, kind: row.kind as ImportKind, reading: row.reading as unknown as FileReading };
  }

  /** The same file, taken in or still open. */
  async same(supplierId: string, kind: ImportKind, sha256: string): Promise<{ id: string } | undefined> {
    const row = await this.prisma.db.supplierImport.findFirst({
      where: { supplierId, kind, sha256 },
      orderBy: { committedAt: { sort: 'desc', nulls: 'last' } },
      select: { id: true },
    });
    return row ?? undefined;
  }

  async add(tx: Tx, row: NewImport): Promise<string> {
    return (await tx.supplierImport.create({ data: { ...row, reading: json(row.reading) }, select: { id: true } })).id;
  }

  async read(tx: Tx, id: string, reading: FileReading): Promise<void> {
    await tx.supplierImport.update({ where: { id }, data: { reading: json(reading) }, select: { id: true } });
  }

  /** Held until the transaction ends. @returns whether it had not been taken in before. */
  async commit(tx: Tx, id: string, { at, byId }: { at: Date; byId: string }): Promise<boolean> {
    const { count } = await tx.supplierImport.updateMany({
      where: { id, committedAt: null },
      data: { committedAt: at, committedById: byId },
    });
    return count === 1;
  }

  async remembered(supplierId: string, kind: ImportKind): Promise<FileReading | undefined> {
    const row = await this.prisma.db.supplierColumns.findUnique({ where: { supplierId_kind: { supplierId, kind } } });
    return row ? (row.reading as unknown as FileReading) : undefined;
  }

  async remember(
    tx: Tx,
    {
      supplierId,
      kind,
      reading,
      savedAt,
      savedById,
    }: { supplierId: string; kind: ImportKind; reading: FileReading; savedAt: Date; savedById: string },
  ): Promise<void> {
    const saved = { reading: json(reading), savedAt, savedById };
    await tx.supplierColumns.upsert({
      where: { supplierId_kind: { supplierId, kind } },
      create: { supplierId, kind, ...saved },
      update: saved,
    });
  }
}
