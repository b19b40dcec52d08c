import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import type { Role } from '../../platform/request-context.ts';

export interface StaffMember {
  id: string;
  name: string;
  displayName: string;
  role: Role;
  isActive: boolean;
}

interface Credentials {
  id: string;
  role: Role;
  secretHash: string;
}

const MEMBER = { id: true, name: true, displayName: true, role: true, isActive: true } as const;

@Injectable()
export class StaffRepository {
  constructor(private readonly prisma: PrismaService) {}

  async findCredentials(name: string): Promise<Credentials | undefined> {
    const row = await this.prisma.db.staff.findFirst({
      where: { name: { equals: name, mode: 'insensitive' }, isActive: true },
      select: { id: true, role: true, secretHash: true },
    });
    return row ? { ...row, role: row.role as Role } : undefined;
  }

  async findSecretHash(id: string): Promise<string | undefined> {
    return (await this.prisma.db.staff.findUnique({ where: { id }, select: { secretHash: true } }))?.secretHash;
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<StaffMember | undefined> {
    const row = await db.staff.findUnique({ where: { id }, select: MEMBER });
    return row ? { ...row, role: row.role as Role } : undefined;
  }

  async list(db: DbClient = this.prisma.db): Promise<StaffMember[]> {
    const rows = await db.staff.findMany({
      orderBy: { displayName: 'asc' },
      select: MEMBER,
    });
    return rows.map((row) => ({ ...row, role: row.role as Role }));
  }

  async create(tx: Tx, member: { name: string; displayName: string; role: Role; secretHash: string }): Promise<string> {
    return (await tx.staff.create({ data: member, select: { id: true } })).id;
  }

  /** The owners who can sign in, held until the transaction ends: of two who close each other, the second sees what the first did. */
  async holdActiveOwners(tx: Tx): Promise<string[]> {
    const rows = await tx.$queryRaw<{ id: string }[]>`
      select id::text as id from staff where role = 'owner' and is_active order by id for update`;
    return rows.map(({ id }) => id);
  }

  async setActive(tx: Tx, id: string, isActive: boolean): Promise<void> {
    await tx.staff.update({ where: { id }, data: { isActive, version: { increment: 1 } } });
    if (!isActive) await tx.session.deleteMany({ where: { staffId: id } });
  }

  async setPin(tx: Tx, id: string, pinHash: string): Promise<void> {
    await tx.staff.update({ where: { id }, data: { pinHash, version: { increment: 1 } } });
  }

  /** Ends the person's sessions but the one that asks. */
  async setSecret(tx: Tx, id: string, { secretHash, but }: { secretHash: string; but?: string }): Promise<void> {
    await tx.staff.update({ where: { id }, data: { secretHash, version: { increment: 1 } } });
    await tx.session.deleteMany({ where: { staffId: id, ...(but === undefined ? {} : { tokenHash: { not: but } }) } });
  }
}
