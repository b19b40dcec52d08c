import type { Tx } from '#libs/db';
import { workday } from '../workshop-hours.ts';
import type { Staff } from './workshop.ts';

const DRUM_L = 60;

/** The drum is fetched whenever it is full: by an invented carrier, with its document. */
export async function writeCollections(tx: Tx, { staff, now }: { staff: Staff; now: Date }): Promise<void> {
  const entries = await tx.wasteEntry.findMany({ where: { direction: 'in' }, orderBy: { at: 'asc' } });
  let inDrumL = 0;
  for (const { at, volumeL } of entries) {
    inDrumL += volumeL.toNumber();
    if (inDrumL < DRUM_L) continue;
    const daysAgo = Math.max(0, Math.floor((now.getTime() - at.getTime()) / 86_400_000) - 1);
    const collectedAt = workday(now, { daysAgo, hour: 15 });
    const document = `note ${4100 + daysAgo}`;
    await tx.wasteEntry.create({
      data: {
        direction: 'collected',
        volumeL: inDrumL.toFixed(3),
        at: collectedAt,
        byId: staff.ownerId,
        carrier: 'Tideway Carriers',
        document,
      },
    });
    inDrumL = 0;
  }
}
