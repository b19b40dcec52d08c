import { randomUUID } from 'node:crypto';
import type { Action } from '#libs/checklist';
import type { Database } from '#libs/db';

/** A customer with a car and a job of the named template; key tag 14, not yet here. */
export async function makeJob(
  db: Database,
  {
    deskId,
    template = 'thermostat',
    registration = 'TQ40KES',
    keyTag = 14,
  }: { deskId: string; template?: string; registration?: string; keyTag?: number },
): Promise<{ jobId: string; vehicleId: string; customerId: string }> {
  const customer = await db.customer.create({
    data: { name: 'Odile Quill', addressLines: ['19 Lark Row'], postcode: 'SM4 7AB', city: 'Saltmere', country: 'IE' },
  });
  const vehicle = await db.vehicle.create({
    data: {
      customerId: customer.id,
      registration,
      make: 'Tamber',
      model: 'Orla 1.4',
      engineCode: 'TK14',
      buildYear: 2017,
      buildMonth: 3,
      thermostatKind: 'wax',
    },
  });
  const { id: templateId } = await db.jobTemplate.findFirstOrThrow({ where: { key: template }, orderBy: { version: 'desc' } });
  const job = await db.job.create({
    data: {
      customerId: customer.id,
      vehicleId: vehicle.id,
      templateId,
      complaint: 'Heater lukewarm',
      createdAt: new Date('2026-06-08T09:00:00Z'),
      createdById: deskId,
      keyTag,
    },
  });
  return { jobId: job.id, vehicleId: vehicle.id, customerId: customer.id };
}

/** A recorded yes to one package. */
export async function sayYes(
  db: Database,
  { jobId, deskId, ceiling = '500.00' }: { jobId: string; deskId: string; ceiling?: string },
): Promise<void> {
  const pack = await db.workPackage.create({
    data: { jobId, position: 1, name: 'Thermostat with its seal', grossLow: '240.00', grossHigh: '240.00' },
  });
  await db.authorisation.create({
    data: {
      jobId,
      saidBy: 'Odile Quill',
      saidAt: new Date('2026-06-08T09:10:00Z'),
      how: 'phone',
      ceilingGross: ceiling,
      recordedById: deskId,
      recordedAt: new Date('2026-06-08T09:10:00Z'),
      packages: { create: { packageId: pack.id } },
    },
  });
}

/** Makes card actions of one person, each with an id of its own. */
export function actionsBy(
  by: string,
  card: string,
  readAt = '2026-06-09T08:00:00Z',
): (kind: Action['kind'], step: string, value?: unknown) => Action {
  return (kind, step, value = null) => ({ id: randomUUID(), card, kind, step, value, readAt, by, byProof: 'session' });
}
