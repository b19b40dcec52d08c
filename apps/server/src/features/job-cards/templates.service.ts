import { Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { TEMPLATES } from '#libs/checklist';
import type { Prisma } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

/** Brings the templates that come with the program into the database. A version that is there already is never touched. */
@Injectable()
export class Templates implements OnApplicationBootstrap {
  constructor(private readonly prisma: PrismaService) {}

  async onApplicationBootstrap(): Promise<void> {
    await this.prisma.db.jobTemplate.createMany({
      data: TEMPLATES.map((template) => ({
        key: template.key,
        version: template.version,
        name: template.name,
        definition: template as unknown as Prisma.InputJsonObject,
      })),
      skipDuplicates: true,
    });
  }
}
