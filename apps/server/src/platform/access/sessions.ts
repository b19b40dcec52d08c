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

interface SessionRow {
  tokenHash: string;
  csrfSecret: string;
  flash: Prisma.JsonValue;
  createdAt: Date;
  lastSeenAt: Date;
  expiresAt: Date;
  staffId: string;
  name: string;
  displayName: string;
  role: Role;
  units: Prisma.JsonValue;
}

@Injectable()
export class Sessions {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
  ) {}

  /** @param signInId by PIN, on a tablet. @returns the token for the cookie. */
  async open(staffId: string, signInId?: string): Promise<string> {
    const token = newToken();
    const now = this.clock.now();
    await this.prisma.db.session.deleteMany({ where: { expiresAt: { lt: new Date(now.getTime() - REMEMBER_MS) } } });
    await this.prisma.db.session.create({
      data: {
        tokenHash: hashToken(token),
        staffId,
        ...(signInId === undefined ? {} : { signInId }),
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
    const row = await this.ofActiveStaff(hashToken(token));
    if (!row || row.expiresAt <= now) return undefined;
    if (now.getTime() - row.lastSeenAt.getTime() > TOUCH_MS) {
      const expiresAt = new Date(Math.min(now.getTime() + IDLE_MS, row.createdAt.getTime() + LONGEST_MS));
      await this.prisma.db.session.updateMany({ where: { tokenHash: row.tokenHash }, data: { lastSeenAt: now, expiresAt } });
    }
    const { staffId, name, displayName, role, units, tokenHash, csrfSecret, flash } = row;
    return { staff: { staffId, name, displayName, role, units: unitChoice(units), tokenHash }, csrfSecret, flash };
  }

  /** Asked with every request, so in one query: the client's own way of reading two tables takes two. */
  private async ofActiveStaff(tokenHash: string): Promise<SessionRow | undefined> {
    const [row] = await this.prisma.db.$queryRaw<SessionRow[]>`
      select s.token_hash as "tokenHash", s.csrf_secret as "csrfSecret", s.flash, s.created_at as "createdAt",
        s.last_seen_at as "lastSeenAt", s.expires_at as "expiresAt",
        p.id as "staffId", p.name, p.display_name as "displayName", p.role, p.units
      from session s join staff p on p.id = s.staff_id
      where s.token_hash = ${tokenHash} and p.is_active`;
    return row;
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
