import { Injectable } from '@nestjs/common';
import { Prisma } from '#libs/db';
import { Clock } from '../clock.ts';
import { PrismaService } from '../database.ts';
import type { Role, SignedIn, UnitChoice } from '../request-context.ts';
import { hashToken, newCsrfSecret, newToken } from './tokens.ts';

export const SESSION_COOKIE = 'runwarm';
const IDLE_MS = 12 * 3_600_000;
const LONGEST_MS = 7 * 24 * 3_600_000;
/** A session's last sight is written no more often than this: a page view is not a write. */
const TOUCH_MS = 60_000;

export const DEFAULT_UNITS: UnitChoice = { temperature: 'C', volume: 'L', pressure: 'kPa', torque: 'Nm' };

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
    await this.prisma.db.session.deleteMany({ where: { expiresAt: { lt: now } } });
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
        units: { ...DEFAULT_UNITS, ...(units as Partial<UnitChoice>) },
        tokenHash: row.tokenHash,
      },
      csrfSecret: row.csrfSecret,
      flash: row.flash,
    };
  }

  async close(token: string): Promise<void> {
    await this.prisma.db.session.deleteMany({ where: { tokenHash: hashToken(token) } });
  }

  async setFlash(tokenHash: string, flash: Prisma.InputJsonObject | null): Promise<void> {
    await this.prisma.db.session.updateMany({ where: { tokenHash }, data: { flash: flash ?? Prisma.DbNull } });
  }
}
