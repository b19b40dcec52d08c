import type { Database } from '#libs/db';

/** One row of everything that the till keeps for good: money on account that an invoice took, and a cash-up of it. */
export async function keepTillRows(db: Database, at: Date): Promise<void> {
  const { id: takenById } = await db.staff.findFirstOrThrow();
  const { id: invoiceId, jobId } = await db.invoice.findFirstOrThrow({ where: { kind: 'invoice', jobId: { not: null } } });
  const { id: paymentId } = await db.payment.create({
    data: { jobId, amount: '10.00', method: 'cash', paidOn: at, takenById, takenAt: at },
  });
  await db.invoicePrepayment.create({ data: { paymentId, invoiceId } });
  await db.cashUp.create({
    data: {
      at,
      byId: takenById,
      floatBefore: '50.00',
      banked: '10.00',
      floatAfter: '50.00',
      lines: { create: { method: 'cash', expected: '60.00', counted: '60.00' } },
      payments: { create: { paymentId } },
    },
  });
}
