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

  async countFailures(since: Date, { name, from }: { name: string; from: string }): Promise<{ byName: number; byAddress: number }> {
    const [byName, byAddress] = await Promise.all([
      this.prisma.db.signInFailure.count({ where: { name, at: { gt: since } } }),
      this.prisma.db.signInFailure.count({ where: { from, at: { gt: since } } }),
    ]);
    return { byName, byAddress };
  }

  async recordFailure(failure: { name: string; from: string; at: Date; forgetBefore: Date }): Promise<void> {
    const { forgetBefore, ...data } = failure;
    await this.prisma.db.signInFailure.deleteMany({ where: { at: { lt: forgetBefore } } });
    await this.prisma.db.signInFailure.create({ data });
  }

  async list(db: DbClient = this.prisma.db): Promise<StaffMember[]> {
    const rows = await db.staff.findMany({
      orderBy: { displayName: 'asc' },
      select: { id: true, name: true, displayName: true, role: true, isActive: true },
    });
    return rows.map((row) => ({ ...row, role: row.role as Role }));
  }

  async create(tx: Tx, member: { name: string; displayName: string; role: Role; secretHash: string }): Promise<string> {
    return (await tx.staff.create({ data: member, select: { id: true } })).id;
  }

  async setActive(tx: Tx, id: string, isActive: boolean): Promise<void> {
    await tx.staff.updateMany({ where: { id }, data: { isActive, version: { increment: 1 } } });
    if (!isActive) await tx.session.deleteMany({ where: { staffId: id } });
  }
}
