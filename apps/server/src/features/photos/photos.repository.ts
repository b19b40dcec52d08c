import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

/** A photo on record, without its bytes. */
export interface PhotoRow {
  id: string;
  jobId: string;
  step: string;
  readingId: string | null;
  words: string;
  widthPx: number;
  heightPx: number;
  takenAt: Date | null;
  receivedAt: Date;
  byId: string;
  byProof: string;
}

export interface NewPhoto extends PhotoRow {
  deviceId: string | null;
  mediaType: string;
  bytes: Uint8Array<ArrayBuffer>;
  smallBytes: Uint8Array<ArrayBuffer>;
  sentSha256: string;
}

const WITHOUT_BYTES = {
  id: true,
  jobId: true,
  step: true,
  readingId: true,
  words: true,
  widthPx: true,
  heightPx: true,
  takenAt: true,
  receivedAt: true,
  byId: true,
  byProof: true,
} as const;

@Injectable()
export class PhotosRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** @returns whether it was added: a repeat finds its id on record. */
  async add(tx: Tx, photo: NewPhoto): Promise<boolean> {
    return (await tx.photo.createMany({ data: [photo], skipDuplicates: true })).count === 1;
  }

  /** What tells a repeat from another picture under the same id. */
  async marks(id: string, db: DbClient = this.prisma.db): Promise<{ jobId: string; sentSha256: string } | null> {
    return db.photo.findUnique({ where: { id }, select: { jobId: true, sentSha256: true } });
  }

  async jobExists(jobId: string, db: DbClient = this.prisma.db): Promise<boolean> {
    return (await db.job.count({ where: { id: jobId } })) > 0;
  }

  async picture(id: string, size: 'whole' | 'small'): Promise<{ mediaType: string; bytes: Uint8Array } | null> {
    if (size === 'whole') return this.prisma.db.photo.findUnique({ where: { id }, select: { mediaType: true, bytes: true } });
    const row = await this.prisma.db.photo.findUnique({ where: { id }, select: { mediaType: true, smallBytes: true } });
    return row && { mediaType: row.mediaType, bytes: row.smallBytes };
  }

  /** In the order in which they came. */
  async ofJob(jobId: string, db: DbClient = this.prisma.db): Promise<PhotoRow[]> {
    return db.photo.findMany({ where: { jobId }, orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }], select: WITHOUT_BYTES });
  }
}
