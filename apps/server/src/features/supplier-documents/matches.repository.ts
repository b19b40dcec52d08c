import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import { unitCodeText } from '../returns/units.service.ts';
import type { FoundDifference, MatchRole, MatchSide, Target } from './reconciled.types.ts';

export interface MatchRow {
  id: string;
  lineId: string;
  documentId: string;
  side: MatchSide;
  role: MatchRole;
  state: 'proposed' | 'laid' | 'ended';
  certainty: 'sure' | 'unsure' | 'by-hand';
  reasons: string[];
  share: string;
  fee: string;
  moneyId: string | null;
  unit: { id: string; label: string; what: string } | null;
  names: { id: string; kind: string; number: string } | null;
  returnNote: { id: string; number: number } | null;
  decidedAt: Date | null;
  decidedById: string | null;
  endedAt: Date | null;
  endedById: string | null;
  endedWhy: string | null;
}

export interface NewMatch {
  lineId: string;
  side: MatchSide;
  role: MatchRole;
  state: 'proposed' | 'laid';
  certainty: 'sure' | 'unsure' | 'by-hand';
  reasons: readonly string[];
  share: string;
  fee: string;
  moneyId: bigint | null;
  at: Date;
  decidedAt: Date | null;
  decidedById: string | null;
}

export interface DifferenceRow {
  id: string;
  kind: FoundDifference['kind'];
  amount: string;
  isWithTax: boolean;
  words: string;
  foundAt: Date;
  lineId: string | null;
  unitId: string | null;
  document: { id: string; kind: string; number: string; supplier: string };
  unit: string | null;
  returnNote: number | null;
  settled: { at: Date; byId: string; why: string } | null;
}

const columnsOf = (target: Target | null) => ({
  unitId: target && 'unitId' in target ? target.unitId : null,
  namesId: target && 'namesId' in target ? target.namesId : null,
  returnNoteId: target && 'returnNoteId' in target ? target.returnNoteId : null,
});

const WHOLE = {
  line: { select: { documentId: true } },
  unit: { select: { id: true, code: true, variant: { select: { partNumber: true, name: true } } } },
  names: { select: { id: true, kind: true, number: true } },
  returnNote: { select: { id: true, number: true } },
} as const;

@Injectable()
export class MatchesRepository {
  constructor(private readonly prisma: PrismaService) {}

  async ofDocument(documentId: string, db: DbClient = this.prisma.db): Promise<MatchRow[]> {
    return this.many({ line: { documentId } }, db);
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<MatchRow | undefined> {
    return (await this.many({ id }, db))[0];
  }

  private async many(where: object, db: DbClient): Promise<MatchRow[]> {
    const rows = await db.lineMatch.findMany({ where, include: WHOLE, orderBy: [{ lineId: 'asc' }, { id: 'asc' }] });
    return rows.map((row) => ({
      id: row.id,
      lineId: row.lineId,
      documentId: row.line.documentId,
      side: row.side as MatchSide,
      role: row.role as MatchRole,
      state: row.state as MatchRow['state'],
      certainty: row.certainty as MatchRow['certainty'],
      reasons: row.reasons,
      share: row.share.toFixed(2),
      fee: row.fee.toFixed(2),
      moneyId: row.moneyId === null ? null : String(row.moneyId),
      unit: row.unit && {
        id: row.unit.id,
        label: unitCodeText(row.unit.code),
        what: `${row.unit.variant.partNumber}, ${row.unit.variant.name}`,
      },
      names: row.names,
      returnNote: row.returnNote,
      decidedAt: row.decidedAt,
      decidedById: row.decidedById,
      endedAt: row.endedAt,
      endedById: row.endedById,
      endedWhy: row.endedWhy,
    }));
  }

  /** The line's row holds all matches of it: whoever decides on one waits here. */
  async holdLine(tx: Tx, lineId: string): Promise<void> {
    await tx.$queryRaw`select 1 from supplier_line where id = ${lineId}::uuid for update`;
  }

  async add(tx: Tx, target: Target, match: NewMatch): Promise<void> {
    await tx.lineMatch.create({ data: { ...match, reasons: [...match.reasons], ...columnsOf(target) }, select: { id: true } });
  }

  async addAll(tx: Tx, matches: readonly (NewMatch & { target: Target })[]): Promise<void> {
    await tx.lineMatch.createMany({
      data: matches.map(({ target, reasons, ...match }) => ({ ...match, reasons: [...reasons], ...columnsOf(target) })),
    });
  }

  async lay(
    tx: Tx,
    id: string,
    { role, moneyId, at, byId }: { role: MatchRole; moneyId: bigint | null; at: Date; byId: string },
  ): Promise<void> {
    await tx.lineMatch.update({ where: { id }, data: { state: 'laid', role, moneyId, decidedAt: at, decidedById: byId } });
  }

  async end(tx: Tx, ids: readonly string[], { at, byId, why }: { at: Date; byId: string; why: string }): Promise<void> {
    await tx.lineMatch.updateMany({
      where: { id: { in: [...ids] }, state: { not: 'ended' } },
      data: { state: 'ended', endedAt: at, endedById: byId, endedWhy: why },
    });
  }

  /** What is open already is not said twice. */
  async addDifferences(tx: Tx, documentId: string, differences: readonly FoundDifference[], foundAt: Date): Promise<void> {
    await tx.supplierDifference.createMany({
      data: differences.map(({ target, ...difference }) => ({ ...difference, documentId, foundAt, ...columnsOf(target) })),
      skipDuplicates: true,
    });
  }

  async settle(
    tx: Tx,
    which: { id: string } | { documentId: string } | { lineId: string; unitId: string | null },
    { at, byId, why }: { at: Date; byId: string; why: string },
  ): Promise<number> {
    const { count } = await tx.supplierDifference.updateMany({
      where: { ...which, settledAt: null },
      data: { settledAt: at, settledById: byId, settledWhy: why },
    });
    return count;
  }

  differencesOf(documentId: string): Promise<DifferenceRow[]> {
    return this.differences({ documentId });
  }

  /** Not settled by a person, and not by money that came since. */
  async openDifferences(): Promise<DifferenceRow[]> {
    const open = await this.prisma.db.$queryRaw<{ id: string }[]>`
      select d.id from supplier_difference d
      left join part_unit u on u.id = d.unit_id
      where d.settled_at is null
        and not (d.kind in ('short', 'not-credited', 'restocking-beyond-terms') and coalesce(u.open_net <= 0, false))
        and not (d.kind in ('short', 'not-credited') and d.return_note_id is not null and not exists (
          select 1 from return_note_unit r join part_unit p on p.id = r.unit_id where r.note_id = d.return_note_id and p.open_net > 0))`;
    return this.differences({ id: { in: open.map(({ id }) => id) } });
  }

  private async differences(where: object): Promise<DifferenceRow[]> {
    const rows = await this.prisma.db.supplierDifference.findMany({
      where,
      orderBy: [{ foundAt: 'desc' }, { id: 'asc' }],
      include: { document: { select: { id: true, kind: true, number: true, supplier: { select: { name: true } } } } },
    });
    const [units, notes] = await Promise.all([
      this.prisma.db.partUnit.findMany({
        where: { id: { in: rows.flatMap(({ unitId }) => unitId ?? []) } },
        select: { id: true, code: true },
      }),
      this.prisma.db.returnNote.findMany({
        where: { id: { in: rows.flatMap(({ returnNoteId }) => returnNoteId ?? []) } },
        select: { id: true, number: true },
      }),
    ]);
    const labels = new Map(units.map(({ id, code }) => [id, unitCodeText(code)]));
    const numbers = new Map(notes.map(({ id, number }) => [id, number]));
    return rows.map((row) => ({
      id: row.id,
      kind: row.kind as DifferenceRow['kind'],
      amount: row.amount.toFixed(2),
      isWithTax: row.isWithTax,
      words: row.words,
      foundAt: row.foundAt,
      lineId: row.lineId,
      unitId: row.unitId,
      document: { ...row.document, supplier: row.document.supplier.name },
      unit: row.unitId === null ? null : (labels.get(row.unitId) ?? null),
      returnNote: row.returnNoteId === null ? null : (numbers.get(row.returnNoteId) ?? null),
      settled: row.settledAt === null ? null : { at: row.settledAt, byId: row.settledById ?? '', why: row.settledWhy ?? '' },
    }));
  }
}
