import { Injectable } from '@nestjs/common';
import type { Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import type { Role } from '../../platform/role.ts';
import type { MissingRun, TabletPerson } from './tablet-facts.ts';

export interface TabletRow {
  id: string;
  name: string;
  createdAt: Date;
  codeUntil: Date | null;
  enrolledAt: Date | null;
  lastSeenAt: Date | null;
  revokedAt: Date | null;
}

export interface StrayRow {
  id: string;
  tablet: { name: string };
  sent: unknown;
  why: string;
  receivedAt: Date;
}

@Injectable()
export class TabletsRepository {
  constructor(private readonly prisma: PrismaService) {}

  list(): Promise<TabletRow[]> {
    return this.prisma.db.tablet.findMany({
      orderBy: [{ revokedAt: { sort: 'asc', nulls: 'first' } }, { name: 'asc' }],
      take: 200,
      select: { id: true, name: true, createdAt: true, codeUntil: true, enrolledAt: true, lastSeenAt: true, revokedAt: true },
    });
  }

  async create(tx: Tx, tablet: { name: string; codeHash: string; codeUntil: Date; createdById: string; createdAt: Date }): Promise<string> {
    return (await tx.tablet.create({ data: tablet, select: { id: true } })).id;
  }

  /** Takes the code for the token, once. @returns the tablet, or null where no such code waits. */
  async enrol(
    tx: Tx,
    { codeHash, tokenHash, at }: { codeHash: string; tokenHash: string; at: Date },
  ): Promise<{ id: string; name: string } | null> {
    const row = await tx.tablet.findFirst({
      where: { codeHash, codeUntil: { gt: at }, revokedAt: null },
      select: { id: true, name: true },
    });
    if (!row) return null;
    const { count } = await tx.tablet.updateMany({
      where: { id: row.id, codeHash },
      data: { codeHash: null, codeUntil: null, tokenHash, enrolledAt: at, lastSeenAt: at },
    });
    return count === 1 ? row : null;
  }

  async revoke(tx: Tx, id: string, { at, byId }: { at: Date; byId: string }): Promise<boolean> {
    const { count } = await tx.tablet.updateMany({
      where: { id, revokedAt: null },
      data: { revokedAt: at, revokedById: byId, tokenHash: null, codeHash: null, codeUntil: null },
    });
    if (count === 1)
      await tx.$executeRaw`delete from session where sign_in_id in (select id from tablet_sign_in where tablet_id = ${id}::uuid)`;
    return count === 1;
  }

  /** Who can sign in on a tablet. */
  async people(): Promise<TabletPerson[]> {
    const rows = await this.prisma.db.staff.findMany({
      where: { isActive: true },
      orderBy: { displayName: 'asc' },
      select: { id: true, displayName: true, role: true, pinHash: true },
    });
    return rows.map(({ pinHash, role, ...row }) => ({ ...row, role: role as Role, hasPin: pinHash !== null }));
  }

  async pinHash(staffId: string): Promise<string | null> {
    return (await this.prisma.db.staff.findFirst({ where: { id: staffId, isActive: true }, select: { pinHash: true } }))?.pinHash ?? null;
  }

  async addSignIn(signIn: { tabletId: string; staffId: string; at: Date }): Promise<string> {
    return (await this.prisma.db.tabletSignIn.create({ data: signIn, select: { id: true } })).id;
  }

  /** Of these sign-ins those that were made on this tablet, with whose they are. */
  async signIns(tabletId: string, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.tabletSignIn.findMany({
      where: { tabletId, id: { in: [...ids] } },
      select: { id: true, staffId: true },
    });
    return new Map(rows.map(({ id, staffId }) => [id, staffId]));
  }

  /** The sign-in by PIN on this tablet that opened the session. */
  async signInOf(tokenHash: string, tabletId: string): Promise<string | null> {
    const session = await this.prisma.db.session.findUnique({ where: { tokenHash }, select: { signInId: true } });
    if (!session?.signInId) return null;
    return (await this.signIns(tabletId, [session.signInId])).has(session.signInId) ? session.signInId : null;
  }

  /** Once, however often it is sent. */
  async keepStray(stray: {
    id: string;
    tabletId: string;
    deviceSeq: number | null;
    sent: unknown;
    why: string;
    receivedAt: Date;
  }): Promise<void> {
    const { sent, ...row } = stray;
    await this.prisma.db.tabletStray.createMany({ data: [{ ...row, sent: sent as Prisma.InputJsonValue }], skipDuplicates: true });
  }

  strays(): Promise<StrayRow[]> {
    return this.prisma.db.tabletStray.findMany({
      where: { lookedAtAt: null },
      orderBy: { receivedAt: 'asc' },
      take: 200,
      select: { id: true, sent: true, why: true, receivedAt: true, tablet: { select: { name: true } } },
    });
  }

  async lookAt(tx: Tx, id: string, { at, byId }: { at: Date; byId: string }): Promise<boolean> {
    return (await tx.tabletStray.updateMany({ where: { id, lookedAtAt: null }, data: { lookedAtAt: at, lookedAtById: byId } })).count === 1;
  }

  /** The highest number of this tablet that has arrived; 0 where none has. */
  async lastSeq(tabletId: string): Promise<number> {
    const [row] = await this.prisma.db.$queryRaw<[{ last: number | null }]>`
      select max(seq) as last from (
        select max(device_seq) as seq from job_action where device_id = ${tabletId}::uuid
        union all select max(device_seq) from tablet_stray where tablet_id = ${tabletId}::uuid) as arrived`;
    return row.last ?? 0;
  }

  /** Between the first and the last number that arrived of a tablet, those that did not. */
  missing(tabletId?: string): Promise<MissingRun[]> {
    return this.prisma.db.$queryRaw<MissingRun[]>`
      with arrived as (
        select device_id as tablet, device_seq as seq from job_action
        where device_id is not null and device_seq is not null and (${tabletId ?? null}::uuid is null or device_id = ${tabletId ?? null}::uuid)
        union select tablet_id, device_seq from tablet_stray
        where device_seq is not null and (${tabletId ?? null}::uuid is null or tablet_id = ${tabletId ?? null}::uuid)),
      steps as (select tablet, seq, lead(seq) over (partition by tablet order by seq) as next from arrived)
      select tablet::text as "tabletId", seq + 1 as "from", next - 1 as "to" from steps where next > seq + 1 order by 1, 2 limit 100`;
  }
}
