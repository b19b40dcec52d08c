import { randomUUID } from 'node:crypto';
import type { Database } from '#libs/db';

/** One row of everything that tablets and cameras leave for good, on the first job there is. */
export async function keepTabletRows(db: Database, at: Date): Promise<void> {
  const { id: jobId } = await db.job.findFirstOrThrow({ select: { id: true } });
  const { id: staffId } = await db.staff.findFirstOrThrow({ select: { id: true } });
  await db.photo.create({
    data: {
      id: randomUUID(),
      jobId,
      mediaType: 'image/jpeg',
      widthPx: 1,
      heightPx: 1,
      bytes: Uint8Array.of(255),
      smallBytes: Uint8Array.of(255),
      sentSha256: 'a'.repeat(64),
      receivedAt: at,
      byId: staffId,
    },
  });
  await db.tablet.create({
    data: { name: 'Back bay', createdById: staffId, createdAt: at, signIns: { create: { staffId, at } } },
  });
}
