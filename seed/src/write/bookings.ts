import type { Tx } from '#libs/db';
import type { JobPlan } from '../plan.ts';
import { laterBy, workday } from '../workshop-hours.ts';

/** Places and hours of the jobs that are here or coming, one after the other so that none overlaps. */
export async function writeBookings(tx: Tx, plans: readonly JobPlan[], now: Date): Promise<void> {
  const places = await tx.place.findMany({ orderBy: { position: 'asc' } });
  const booked = plans.filter(({ chapter }) => ['standing', 'opened', 'closed-up', 'filled', 'run-hot', 'expected'].includes(chapter));
  const perPlace = Math.ceil(booked.length / places.length);
  await tx.booking.createMany({
    data: booked.map((plan, index) => {
      const slot = index % perPlace;
      const startsAt = laterBy(workday(now, { daysAgo: 0, hour: 8 }), slot * 105);
      return {
        jobId: plan.id,
        placeId: places[Math.floor(index / perPlace)]?.id ?? '',
        phase: plan.template === 'diagnosis' ? 'checks' : 'opening',
        startsAt,
        endsAt: laterBy(startsAt, 90),
      };
    }),
  });
}
