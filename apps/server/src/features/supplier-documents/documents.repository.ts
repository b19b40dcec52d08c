import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import type { LineKind } from '#libs/matching';
import { PrismaService } from '../../platform/database.ts';
import type { DocumentKind, EnteredLine } from './reconciled.types.ts';

export interface SupplierName {
  id: string;
  name: string;
}

export interface DocumentRow {
  id: string;
  kind: DocumentKind;
  number: string;
  datedOn: Date;
  total: string;
  gross: string | null;
  supplier: SupplierName;
  enteredAt: Date;
  enteredById: string;
  importId: string | null;
  withdrawn: { at: Date; byId: string; why: string } | null;
  lineCount: number;
  /** Proposals that wait for a person. */
  toDecide: number;
}

export interface LineRow extends EnteredLine {
  kind: LineKind | null;
}

export interface NewDocument {
  id: string;
  kind: DocumentKind;
  supplierId: string;
  number: string;
  datedOn: Date;
  total: string;
  gross: string | null;
  importId: string | null;
  enteredById: string;
  enteredAt: Date;
}

const MOST = 60;
const NAME = { select: { id: true, name: true } } as const;
const TO_DECIDE = { some: { state: 'proposed' } } as const;

@Injectable()
export class DocumentsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async suppliers(): Promise<SupplierName[]> {
    return this.prisma.db.supplier.findMany({ orderBy: { name: 'asc' }, ...NAME });
  }

  recent(): Promise<DocumentRow[]> {
    return this.many(this.prisma.db, {});
  }

  /** Those with something left to decide. */
  undecided(): Promise<DocumentRow[]> {
    return this.many(this.prisma.db, { withdrawnAt: null, lines: { some: { matches: TO_DECIDE } } });
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<DocumentRow | undefined> {
    return (await this.many(db, { id }))[0];
  }

  async ofImport(importId: string): Promise<DocumentRow[]> {
    return this.many(this.prisma.db, { importId });
  }

  /** Which of these numbers are on record, in small letters. */
  async numbersTaken(
    supplierId: string,
    kind: DocumentKind,
    numbers: readonly string[],
    db: DbClient = this.prisma.db,
  ): Promise<Set<string>> {
    const rows = await db.supplierDocument.findMany({
      where: { supplierId, kind, withdrawnAt: null, number: { in: [...numbers], mode: 'insensitive' } },
      select: { number: true },
    });
    return new Set(rows.map(({ number }) => number.toLowerCase()));
  }

  async lines(documentId: string, db: DbClient = this.prisma.db): Promise<LineRow[]> {
    const rows = await db.supplierLine.findMany({ where: { documentId }, orderBy: { position: 'asc' } });
    return rows.map(({ documentId: _, datedOn, amount, kind, ...row }) => ({
      ...row,
      amount: amount.toFixed(2),
      date: datedOn === null ? null : datedOn.toISOString().slice(0, 10),
      kind: kind as LineKind | null,
    }));
  }

  async create(tx: Tx, document: NewDocument, lines: readonly LineRow[]): Promise<void> {
    await tx.supplierDocument.create({ data: document, select: { id: true } });
    await tx.supplierLine.createMany({
      data: lines.map(({ date, ...line }) => ({
        ...line,
        documentId: document.id,
        datedOn: date === null ? null : new Date(`${date}T00:00:00Z`),
      })),
    });
  }

  /** @returns whether it was not withdrawn before. */
  async withdraw(tx: Tx, id: string, { at, byId, why }: { at: Date; byId: string; why: string }): Promise<boolean> {
    const { count } = await tx.supplierDocument.updateMany({
      where: { id, withdrawnAt: null },
      data: { withdrawnAt: at, withdrawnById: byId, withdrawnWhy: why },
    });
    return count === 1;
  }

  private async many(db: DbClient, where: object): Promise<DocumentRow[]> {
    const rows = await db.supplierDocument.findMany({
      where,
      orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
      take: MOST,
      include: { supplier: NAME, _count: { select: { lines: true } } },
    });
    const ids = rows.map(({ id }) => id);
    const waiting = await db.supplierLine.groupBy({
      by: ['documentId'],
      where: { documentId: { in: ids }, matches: TO_DECIDE },
      _count: { _all: true },
    });
    const toDecide = new Map(waiting.map(({ documentId, _count }) => [documentId, _count._all]));
    return rows.map((row) => ({
      id: row.id,
      kind: row.kind as DocumentKind,
      number: row.number,
      datedOn: row.datedOn,
      total: row.total.toFixed(2),
      gross: row.gross?.toFixed(2) ?? null,
      supplier: row.supplier,
      enteredAt: row.enteredAt,
      enteredById: row.enteredById,
      importId: row.importId,
      withdrawn: row.withdrawnAt === null ? null : { at: row.withdrawnAt, byId: row.withdrawnById ?? '', why: row.withdrawnWhy ?? '' },
      lineCount: row._count.lines,
      toDecide: toDecide.get(row.id) ?? 0,
    }));
  }
}
