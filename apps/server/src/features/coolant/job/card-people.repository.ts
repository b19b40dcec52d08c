import { Injectable } from '@nestjs/common';
import { PrismaService } from '../../../platform/database.ts';

@Injectable()
export class CardPeopleRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** How people are called, by id: also of those who have left. */
  async names(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.staff.findMany({ select: { id: true, displayName: true } });
    return new Map(rows.map(({ id, displayName }) => [id, displayName]));
  }
}
