import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface Place {
  id: string;
  name: string;
  kind: string;
  words: string;
}

export interface BookingOfDay {
  startsAt: Date;
  endsAt: Date;
  phase: string;
  placeId: string;
  staffId: string | null;
  jobId: string;
}

@Injectable()
export class BookingsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async places(): Promise<Place[]> {
    return this.prisma.db.place.findMany({
      where: { isActive: true },
      orderBy: { position: 'asc' },
      select: { id: true, name: true, kind: true, words: true },
    });
  }

  async hands(): Promise<{ id: string; displayName: string }[]> {
    return this.prisma.db.staff.findMany({
      where: { isActive: true, role: { in: ['technician', 'owner'] } },
      orderBy: { displayName: 'asc' },
      select: { id: true, displayName: true },
    });
  }

  async book(tx: Tx, booking: BookingOfDay): Promise<string> {
    return (await tx.booking.create({ data: booking, select: { id: true } })).id;
  }

  /** @returns the job, or undefined where it was called off before. */
  async callOff(tx: Tx, id: string, at: Date): Promise<string | undefined> {
    const { count } = await tx.booking.updateMany({ where: { id, calledOffAt: null }, data: { calledOffAt: at } });
    if (count === 0) return undefined;
    return (await tx.booking.findUniqueOrThrow({ where: { id }, select: { jobId: true } })).jobId;
  }
}
