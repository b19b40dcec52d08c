import { Injectable } from '@nestjs/common';
import type { LogAnswers } from '#libs/warm-up';
import type { DbClient, Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import type { LogSetting, LogSource } from '../log-setting.ts';
import { packText, unpackText } from './pack-text.ts';

export interface Draft {
  id: string;
  jobId: string;
  source: LogSource;
  fileName: string;
  text: string;
  setting: LogSetting;
  uploadedById: string;
  uploadedAt: Date;
}

/** Logs that wait to be looked over, and what was answered about files like them. */
@Injectable()
export class DraftsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async create(tx: Tx, { text, setting, ...draft }: Omit<Draft, 'id'>): Promise<string> {
    const row = await tx.warmUpDraft.create({
      data: { ...draft, text: await packText(text), setting: setting as unknown as Prisma.InputJsonObject },
      select: { id: true },
    });
    return row.id;
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<Draft | undefined> {
    const row = await db.warmUpDraft.findUnique({ where: { id } });
    if (!row) return undefined;
    return { ...row, source: row.source as LogSource, text: await unpackText(row.text), setting: row.setting as unknown as LogSetting };
  }

  async ofJob(jobId: string): Promise<{ id: string; fileName: string; uploadedAt: Date }[]> {
    return this.prisma.db.warmUpDraft.findMany({
      where: { jobId },
      orderBy: { uploadedAt: 'asc' },
      select: { id: true, fileName: true, uploadedAt: true },
    });
  }

  async change(tx: Tx, id: string, { text, setting }: Pick<Draft, 'text' | 'setting'>): Promise<void> {
    await tx.warmUpDraft.update({
      where: { id },
      data: { text: await packText(text), setting: setting as unknown as Prisma.InputJsonObject },
    });
  }

  /** @returns false where it was gone already */
  async remove(tx: Tx, id: string): Promise<boolean> {
    return (await tx.warmUpDraft.deleteMany({ where: { id } })).count > 0;
  }

  async forgetOlderThan(at: Date): Promise<void> {
    await this.prisma.db.warmUpDraft.deleteMany({ where: { uploadedAt: { lt: at } } });
  }

  async answersFor(shape: string): Promise<LogAnswers | undefined> {
    const row = await this.prisma.db.loggerShape.findUnique({ where: { shape }, select: { answers: true } });
    return row ? (row.answers as LogAnswers) : undefined;
  }

  async remember(tx: Tx, shape: string, { answers, byId, at }: { answers: LogAnswers; byId: string; at: Date }): Promise<void> {
    const data = { answers: answers as Prisma.InputJsonObject, answeredById: byId, answeredAt: at };
    await tx.loggerShape.upsert({ where: { shape }, create: { shape, ...data }, update: data });
  }
}
