import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.ts';
import { PrismaService } from '../database.ts';
import { hashToken, newToken } from './tokens.ts';

export const KEPT_COOKIE = 'kept';
const KEEP_MS = 15 * 60_000;

/** A form that came after its session had ended waits here until its sender has signed in again. */
@Injectable()
export class KeptForms {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
  ) {}

  /** @param body with the marks `_page` and `_form` of where it came from. */
  async keep(path: string, body: Record<string, string>): Promise<string> {
    const now = this.clock.now();
    const token = newToken();
    await this.prisma.db.keptForm.deleteMany({ where: { keptAt: { lt: new Date(now.getTime() - KEEP_MS) } } });
    await this.prisma.db.keptForm.create({ data: { tokenHash: hashToken(token), path, body, keptAt: now } });
    return token;
  }

  async find(token: string): Promise<{ path: string; body: Record<string, unknown> } | undefined> {
    const row = await this.prisma.db.keptForm.findUnique({ where: { tokenHash: hashToken(token) } });
    if (!row || this.clock.now().getTime() - row.keptAt.getTime() > KEEP_MS) return undefined;
    return { path: row.path, body: row.body as Record<string, unknown> };
  }

  async drop(token: string): Promise<void> {
    await this.prisma.db.keptForm.deleteMany({ where: { tokenHash: hashToken(token) } });
  }
}
