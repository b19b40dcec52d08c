import { composeDocument } from '#libs/invoicing';
import type { Prisma, Tx } from '#libs/db';
import { draftOf } from '../../../apps/server/src/features/invoices/draft-of.ts';
import { invoiceDraft } from '../../../apps/server/src/features/invoices/invoice-draft.ts';
import type { BillFacts } from '../../../apps/server/src/features/invoices/job-bill.repository.ts';
import type { Workshop } from '../../../apps/server/src/platform/workshop-facts.ts';
import type { Random } from '../random.ts';
import { laterBy, ZONE } from '../workshop-hours.ts';
import { DateTime } from 'luxon';
import type { DemoVariant } from './catalogue.ts';
import type { WrittenJob } from './jobs.ts';
import type { Staff } from './workshop.ts';

const DAY_MIN = 24 * 60;
const dayOf = (at: Date): string => DateTime.fromJSDate(at, { zone: ZONE }).toFormat('yyyy-MM-dd');

interface InvoiceFacts {
  job: WrittenJob;
  packageId: string;
  gross: string;
  number: number;
  right: DemoVariant | undefined;
  coolant: BillFacts['coolant'];
  customer: BillFacts['customer'];
}

function billFacts({ job, packageId, gross, number, right, coolant, customer }: InvoiceFacts): BillFacts {
  const { plan, card, keysOutAt } = job;
  const { car } = plan;
  return {
    job: { id: plan.id, number, stage: card.stage, odometerKm: car.odometerKm, keysOutAt, complaint: plan.complaint, noChargeWhy: null },
    templateName: card.template.name,
    customer,
    vehicle: { registration: car.registration, vin: null, makeAndModel: `${car.model.make} ${car.model.model}` },
    packages: [{ id: packageId, name: 'Work', gross, saidBy: car.customerName, saidAt: plan.createdAt.toISOString(), how: 'phone' }],
    ceilingGross: gross,
    fittedUnits: right
      ? [{ id: right.variantId, name: `Thermostat ${right.openingTemperatureC} °C`, partNumber: right.partNumber, costNet: right.priceNet }]
      : [],
    coolant,
    menuPrice: null,
    edits: [],
    adjustments: [],
    paper: { advice: '', orderReference: '', buyerReference: '' },
    openDebts: [],
    standing: null,
    deposits: [],
    onAccount: [],
  };
}

/** The invoice of a finished job, made by the same rules as at the till. @returns whether it is paid. */
export async function writeInvoice(
  tx: Tx,
  random: Random,
  {
    facts,
    workshop,
    staff,
    serials,
    now,
  }: { facts: InvoiceFacts; workshop: Workshop; staff: Staff; serials: Map<string, number>; now: Date },
): Promise<boolean> {
  const bill = billFacts(facts);
  const { card, plan, keysOutAt } = facts.job;
  const issuedAt = keysOutAt ?? now;
  const draft = draftOf({ facts: bill, card, workshop });
  const issuedOn = dayOf(issuedAt);
  const series = issuedOn.slice(0, 4);
  const serial = (serials.get(series) ?? 0) + 1;
  serials.set(series, serial);
  await tx.invoiceSeries.createMany({ data: [{ key: series, prefix: `${series}-` }], skipDuplicates: true });
  const number = `${series}-${String(serial).padStart(4, '0')}`;
  const document = composeDocument({ ...invoiceDraft(draft, issuedOn), number, issueDate: issuedOn, remittance: number });
  if (!document.ok) throw new Error(document.errors.map(({ message }) => message).join(' '));
  const { taxExclusive, vatTotal, taxInclusive, payable } = document.value.totals;
  const invoice = await tx.invoice.create({
    data: {
      seriesKey: series,
      serial,
      number,
      jobId: plan.id,
      customerId: plan.car.customerId,
      issuedOn: new Date(`${issuedOn}T00:00:00Z`),
      dueOn: new Date(`${document.value.dueDate ?? issuedOn}T00:00:00Z`),
      currency: workshop.currency,
      taxExclusive,
      vatTotal,
      taxInclusive,
      payable,
      document: document.value as unknown as Prisma.InputJsonObject,
      issuedAt,
      issuedById: staff.deskId,
    },
  });
  const isPaid = plan.daysAgo > 40 || random.chance(0.7);
  if (!isPaid) return false;
  const paidAt = laterBy(issuedAt, random.chance(0.6) ? 0 : Math.min(plan.daysAgo, random.between(1, 14)) * DAY_MIN);
  const paidOn = new Date(`${dayOf(paidAt)}T00:00:00Z`);
  await tx.payment.create({
    data: {
      invoiceId: invoice.id,
      amount: payable,
      method: random.pick(['card', 'cash', 'transfer']),
      paidOn,
      takenById: staff.deskId,
      takenAt: paidAt,
    },
  });
  return true;
}
