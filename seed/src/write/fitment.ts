import type { Tx } from '#libs/db';
import type { JobPlan } from '../plan.ts';
import { isReached } from '../story.ts';
import { laterBy } from '../workshop-hours.ts';
import type { DemoVariant } from './catalogue.ts';
import type { Staff } from './workshop.ts';

/** Readings on the removed part: all that settle it where the job is past that, some where it lies open on the bench. */
export async function writeFitment(tx: Tx, { plan, right, staff }: { plan: JobPlan; right: DemoVariant; staff: Staff }): Promise<void> {
  if (!isReached(plan.chapter, 'opened')) return;
  const readAt = laterBy(plan.arrivesAt, 95);
  const isSettled = isReached(plan.chapter, 'closed-up');
  const reading = { jobId: plan.id, readById: staff.techId, readAt };
  await tx.fitmentReading.createMany({
    data: [
      { ...reading, feature: 'openingTemperatureC', figure: right.openingTemperatureC, instrument: 'stamp', expandedU: 0 },
      { ...reading, feature: 'bleedDevice', words: right.bleedDevice, instrument: 'eye' },
      isSettled
        ? { ...reading, feature: 'seal', words: right.seal, instrument: 'eye' }
        : { ...reading, feature: 'seal', couldNotRead: true, why: 'perished, none left' },
      ...(isSettled
        ? [
            { ...reading, feature: 'flangeDiameterMm', figure: right.flangeDiameterMm + 0.02, instrument: 'vernier', expandedU: '0.05' },
            { ...reading, feature: 'overallHeightMm', figure: right.overallHeightMm - 0.05, instrument: 'vernier', expandedU: '0.05' },
          ]
        : []),
    ],
  });
  if (!isSettled) return;
  await tx.fitmentChoice.create({
    data: {
      jobId: plan.id,
      variantId: right.variantId,
      engineCode: plan.car.model.engine.code,
      probability: '0.99',
      evidence: { basis: 'readings' },
      chosenById: staff.techId,
      chosenAt: laterBy(plan.arrivesAt, 100),
    },
  });
}
