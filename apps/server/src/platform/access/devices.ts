import { Injectable } from '@nestjs/common';
import { Clock } from '../clock.ts';
import { PrismaService } from '../database.ts';
import { hashToken } from './tokens.ts';

export const TABLET_COOKIE = 'tablet';
/** The longest that browsers keep a cookie; every contact sets it anew. */
export const TABLET_COOKIE_S = 400 * 24 * 3600;
/** A tablet's last sight is written no more often than this. */
const TOUCH_MS = 60_000;

/** An enrolled tablet, known by its own token: no idle time ends it, and it is nobody. */
export interface Device {
  id: string;
  name: string;
}

@Injectable()
export class Devices {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
  ) {}

  async find(token: string | undefined): Promise<Device | undefined> {
    if (token === undefined || token === '') return undefined;
    const row = await this.prisma.db.tablet.findUnique({
      where: { tokenHash: hashToken(token) },
      select: { id: true, name: true, lastSeenAt: true },
    });
    if (!row) return undefined;
    const now = this.clock.now();
    if (now.getTime() - (row.lastSeenAt?.getTime() ?? 0) > TOUCH_MS) {
      await this.prisma.db.tablet.updateMany({ where: { id: row.id }, data: { lastSeenAt: now } });
    }
    return { id: row.id, name: row.name };
  }
}
