import type { Database, Tx } from '#libs/db';
import { planJobs } from './plan.ts';
import { createRandom, type Random } from './random.ts';
import { isReached } from './story.ts';
import { demoWorkshop } from './demo-workshop.ts';
import { writeAccounts } from './write/accounts.ts';
import { writeBookings } from './write/bookings.ts';
import { type DemoVariant, writeCatalogue } from './write/catalogue.ts';
import { writeCollections } from './write/collections.ts';
import { writeFitment } from './write/fitment.ts';
import { writeInvoice } from './write/invoices.ts';
import { writeJob, type WrittenJob, writeYes } from './write/jobs.ts';
import { writePeople } from './write/people.ts';
import { rightVariant, writeUnits } from './write/units.ts';
import { writeWarmUpLogs } from './write/warm-up-logs.ts';
import { SECRET, writeWorkshop } from './write/workshop.ts';

const SEED = 20_261_124;
const PRICES = { thermostat: '520.00', 'coolant-change': '380.00', diagnosis: '190.00' } as const;

/**
 * Furnishes an empty database with the invented demo workshop: a year of jobs in every stage, the same at every first start but
 * for the dates, which follow `now`. All or nothing.
 */
export async function seedDemo(
  db: Database,
  { now, say }: { now: Date; say: (line: string) => void },
): Promise<{ staff: readonly string[]; secret: string }> {
  const count = await db.$transaction((tx) => furnish(tx, now), { maxWait: 10_000, timeout: 120_000 });
  say(`The demo workshop has ${count.customers} customers, ${count.vehicles} vehicles and ${count.jobs} jobs.`);
  return { staff: ['desk', 'tech', 'owner'], secret: SECRET };
}

async function furnish(tx: Tx, now: Date): Promise<{ customers: number; vehicles: number; jobs: number }> {
  const random = createRandom(SEED);
  const staff = await writeWorkshop(tx, now);
  const cars = await writePeople(tx, random, { staff, now });
  const variants = await writeCatalogue(tx, now);
  const plans = planJobs(random, { cars, now });
  const templates = new Map((await tx.jobTemplate.findMany({ select: { id: true, key: true } })).map(({ id, key }) => [key, id]));
  const workshop = await demoWorkshop(tx);
  const product = await tx.coolantProduct.findFirstOrThrow({ where: { isActive: true } });
  const { id, name, serviceYears, serviceKm } = product;
  const coolant = { id, name, pricePerL: product.pricePerL.toFixed(2), serviceYears, serviceKm };
  const customers = new Map((await tx.customer.findMany()).map((customer) => [customer.id, customer]));
  const serials = new Map<string, number>();
  const written: (WrittenJob & { isPaid: boolean })[] = [];
  for (const plan of plans) {
    const fits = variants.filter(({ engines }) => engines.includes(plan.car.model.engine.code));
    const right = plan.template === 'thermostat' ? rightVariant(random, fits) : undefined;
    const job = await writeJob(tx, random, {
      plan,
      templateId: templates.get(plan.template) ?? '',
      staff,
      variant: right?.partNumber ?? '',
    });
    const gross = PRICES[plan.template];
    const packageId = plan.chapter === 'spoken-of' ? undefined : await writeYes(tx, { plan, staff, gross });
    if (right && plan.chapter !== 'spoken-of') await bench(tx, random, { plan, fits, right, staff, now });
    const customer = customers.get(plan.car.customerId);
    const { number } = await tx.job.findUniqueOrThrow({ where: { id: plan.id }, select: { number: true } });
    const isPaid =
      isReached(plan.chapter, 'gone') && packageId !== undefined && customer !== undefined
        ? await writeInvoice(tx, random, {
            facts: { job, packageId, gross, number, right, coolant, customer },
            workshop,
            staff,
            serials,
            now,
          })
        : false;
    written.push({ ...job, isPaid });
  }
  for (const [key, last] of serials) await tx.invoiceSeries.update({ where: { key }, data: { nextNumber: last + 1 } });
  await writeBookings(tx, plans, now);
  await writeAccounts(tx, written);
  await writeCollections(tx, { staff, now });
  await writeWarmUpLogs(tx, createRandom(SEED + 1), { jobs: written, staff, workshop });
  return { customers: customers.size, vehicles: cars.length, jobs: plans.length };
}

async function bench(
  tx: Tx,
  random: Random,
  {
    fits,
    right,
    ...rest
  }: { fits: readonly DemoVariant[]; right: DemoVariant } & Pick<Parameters<typeof writeUnits>[2], 'plan' | 'staff' | 'now'>,
): Promise<void> {
  await writeUnits(tx, random, { ...rest, variants: fits, rightId: right.variantId });
  await writeFitment(tx, { ...rest, right });
}
