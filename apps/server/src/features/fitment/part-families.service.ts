import { Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import type { Prisma } from '#libs/db';
import { partFamilies } from '#libs/fitment';
import { PrismaService } from '../../platform/database.ts';

/** Brings the part families that come with the program into the database. A version that is there already is never touched. */
@Injectable()
export class PartFamilies implements OnApplicationBootstrap {
  constructor(private readonly prisma: PrismaService) {}

  async onApplicationBootstrap(): Promise<void> {
    await this.prisma.db.partFamily.createMany({
      data: partFamilies.map((family) => ({
        key: family.id,
        version: 1,
        name: family.name,
        features: family as unknown as Prisma.InputJsonObject,
      })),
      skipDuplicates: true,
    });
  }
}
