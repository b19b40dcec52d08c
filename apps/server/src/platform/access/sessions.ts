import { Injectable } from '@nestjs/common';
import { Prisma } from '#libs/db';
import { Clock } from '../clock.ts';
import { PrismaService } from '../database.ts';
import type { Role, SignedIn } from '../request-context.ts';
import { hashToken, newCsrfSecret, newToken } from './tokens.ts';
import { unitChoice } from './unit-choice.ts';

export const SESSION_COOKIE = 'runwarm';
const IDLE_MS = 12 * 3_600_000;
const LONGEST_MS = 7 * 24 * 3_600_000;
/** A session's last sight is written no more often than this: a page view is not a write. */
const TOUCH_MS = 60_000;
/** An ended session is remembered so long, to know whose form it was that came too late. */
const REMEMBER_MS = 24 * 3_600_000;

export interface OpenSession {
  staff: SignedIn;
  csrfSecret: string;
  flash: Prisma.JsonValue;
}

@Injectable()
export class Sessions {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
  ) {}

  /** @returns the token for the cookie. */
  async open(staffId: string): Promise<string> {
    const token = newToken();
    const now = this.clock.now();
    await this.prisma.db.session.deleteMany({ where: { expiresAt: { lt: new Date(now.getTime() - REMEMBER_MS) } } });
    await this.prisma.db.session.create({
      data: {
        tokenHash: hashToken(token),
        staffId,
        csrfSecret: newCsrfSecret(),
        createdAt: now,
        lastSeenAt: now,
        expiresAt: new Date(now.getTime() + IDLE_MS),
      },
    });
    return token;
  }

  async find(token: string): Promise<OpenSession | undefined> {
    const now = this.clock.now();
    const row = await this.prisma.db.session.findUnique({ where: { tokenHash: hashToken(token) }, include: { staff: true } });
    if (!row || row.expiresAt <= now || !row.staff.isActive) return undefined;
    if (now.getTime() - row.lastSeenAt.getTime() > TOUCH_MS) {
      const expiresAt = new Date(Math.min(now.getTime() + IDLE_MS, row.createdAt.getTime() + LONGEST_MS));
      await this.prisma.db.session.updateMany({ where: { tokenHash: row.tokenHash }, data: { lastSeenAt: now, expiresAt } });
    }
    const { id, name, displayName, role, units } = row.staff;
    return {
      staff: {
        staffId: id,
        name,
        displayName,
        role: role as Role,
        units: unitChoice(units),
        tokenHash: row.tokenHash,
      },
      csrfSecret: row.csrfSecret,
      flash: row.flash,
    };
  }

  /** Whose session this was, if it ended by itself: one that was signed out of or closed is forgotten at once. */
  async whoseEnded(token: string): Promise<string | undefined> {
    const row = await this.prisma.db.session.findUnique({ where: { tokenHash: hashToken(token) } });
    return row && row.expiresAt <= this.clock.now() ? row.staffId : undefined;
  }

  async close(token: string): Promise<void> {
    await this.prisma.db.session.deleteMany({ where: { tokenHash: hashToken(token) } });
  }

  async setFlash(tokenHash: string, flash: Prisma.InputJsonObject | null): Promise<void> {
    await this.prisma.db.session.updateMany({ where: { tokenHash }, data: { flash: flash ?? Prisma.DbNull } });
  }
}
