import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { createDatabase, type Database, type DbClient, Prisma, type Tx } from '#libs/db';
import { END_PLACES } from '#libs/unit-life';
import { emptyTables, openTestDatabase, refusal } from '../support/database.ts';
import { makeJob, sayYes } from '../support/factories.ts';

const NOW = new Date('2026-06-09T08:00:00Z');
const PERSON = randomUUID();

let db: Database;
let other: Database; // as another process of the same workshop
let job: { jobId: string; vehicleId: string; customerId: string };
beforeAll(async () => {
  const opened = await openTestDatabase();
  db = opened.db;
  other = createDatabase({ ...opened.connection, max: 2 });
});
beforeEach(async () => {
  await emptyTables(db);
  await db.jobTemplate.create({ data: { key: 'thermostat', version: 1, name: 'Thermostat', definition: {} } });
  job = await makeJob(db, { deskId: PERSON });
});
afterAll(async () => {
  await db.$disconnect();
  await other.$disconnect();
});

function signal(): [Promise<void>, () => void] {
  let give: () => void = () => undefined;
  return [new Promise<void>((resolve) => (give = resolve)), () => give()];
}

type Work = (tx: Tx) => Promise<unknown>;

/** The second begins while the first is done and not committed: it waits for the commit, and is then refused. */
async function secondRefused(code: string, [first, second]: [Work, Work]): Promise<void> {
  const [committing, commit] = signal();
  const [isDone, done] = signal();
  const begun = db.$transaction(
    async (tx) => {
      await first(tx);
      done();
      await committing;
    },
    { timeout: 20_000 },
  );
  await Promise.race([isDone, begun]);
  let isOver = false;
  const outcome = refusal(other.$transaction(second, { timeout: 20_000 })).finally(() => (isOver = true));
  const waited = await untilBlocked(() => isOver);
  commit();
  await begun;
  expect({ waited, refused: await outcome }).toEqual({ waited: true, refused: code });
}

async function untilBlocked(isOver: () => boolean): Promise<boolean> {
  while (!isOver()) {
    const [row] = await db.$queryRaw<[{ blocked: number }]>`select count(*)::int as blocked from pg_stat_activity
      where datname = current_database() and wait_event_type = 'Lock'`;
    if (row.blocked > 0) return true;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  return false;
}

async function part(): Promise<string> {
  const { id: supplierId } = await db.supplier.create({ data: { name: 'Norrow Parts', returnDays: 30 } });
  const { id: familyId } = await db.partFamily.create({ data: { key: 'thermostat', version: 1, name: 'Thermostat', features: [] } });
  const data = { familyId, supplierId, partNumber: 'NR-5488', name: 'Thermostat', priceNet: '23.40' };
  return (await db.partVariant.create({ data })).id;
}

const ISSUED = { issuedOn: NOW, dueOn: NOW, issuedAt: NOW, issuedById: PERSON, currency: 'EUR', document: {} };

type Bill = Partial<Prisma.InvoiceUncheckedCreateInput> & { net?: number; series?: string };

/** An issued document with 20 % of tax, next in its series. */
async function bill(client: DbClient, { kind = 'invoice', net = 100, series = 'A', ...change }: Bill = {}): Promise<string> {
  await client.invoiceSeries.createMany({ data: [{ key: series, prefix: series }], skipDuplicates: true });
  const serial = (await client.invoice.count({ where: { seriesKey: series } })) + 1;
  const gross = (net * 1.2).toFixed(2);
  const sums = { taxExclusive: net, vatTotal: (net * 0.2).toFixed(2), taxInclusive: gross, payable: gross };
  const { jobId, customerId } = job;
  const numbered = { seriesKey: series, serial, number: `${series}${serial}`, kind };
  const data = { ...ISSUED, ...numbered, jobId, customerId, ...sums, ...change };
  return (await client.invoice.create({ data })).id;
}
const credit = (client: DbClient, originalId: string, change: Bill = {}) => bill(client, { kind: 'credit-note', originalId, ...change });
const pay = (client: DbClient, invoiceId: string, amount: string) =>
  client.payment.create({
    data: {
      invoiceId,
      amount,
      method: 'card',
      why: amount.startsWith('-') ? 'paid back' : '',
      paidOn: NOW,
      takenById: PERSON,
      takenAt: NOW,
    },
  });

describe('an invoice', () => {
  it('is the only one of its job until it is credited in full', async () => {
    const first = await bill(db);
    expect(await refusal(bill(db))).toBe('RW007');
    expect(await refusal(bill(db, { kind: 'simplified' }))).toBe('RW007');
    await credit(db, first, { net: 60 });
    expect(await refusal(bill(db))).toBe('RW007');
    await credit(db, first, { net: 40 });
    await bill(db);
    expect(await refusal(bill(db))).toBe('RW007');
  });

  it('leaves room for deposits, for other jobs and for bills of no job', async () => {
    await bill(db, { kind: 'deposit' });
    await bill(db, { kind: 'deposit' });
    await bill(db);
    await db.job.update({ where: { id: job.jobId }, data: { keyTag: null } });
    const next = await makeJob(db, { deskId: PERSON, registration: 'AA1' });
    await bill(db, { jobId: next.jobId });
    await bill(db, { jobId: null });
    await bill(db, { jobId: null });
    expect(await db.invoice.count()).toBe(6);
  });

  it('has no figure below zero, and may be of nothing', async () => {
    expect(await refusal(bill(db, { net: -0.01 }))).toBe('invoice_not_below_zero');
    expect(await refusal(bill(db, { payable: '-0.01' }))).toBe('invoice_not_below_zero');
    await bill(db, { payable: '0' });
  });

  it('is issued once by two at the same moment, each with a number of its own', async () => {
    await secondRefused('RW007', [(tx) => bill(tx, { series: 'A' }), (tx) => bill(tx, { series: 'B' })]);
    expect(await db.invoice.count()).toBe(1);
  });
});

describe('a credit note', () => {
  it('takes back at most what was invoiced, net and with tax', async () => {
    const invoice = await bill(db);
    expect(await refusal(credit(db, invoice, { net: 100.01 }))).toBe('RW008');
    await credit(db, invoice, { net: 99.99 });
    expect(await refusal(credit(db, invoice, { net: 0.02 }))).toBe('RW008');
    await credit(db, invoice, { net: 0.01 });
  });

  it('is not drawn beyond by its tax alone', async () => {
    const { id, ...row } = await db.invoice.findUniqueOrThrow({ where: { id: await bill(db) } });
    const note = { ...row, document: {}, kind: 'credit-note', originalId: id, serial: 2, number: 'A2' };
    expect(await refusal(db.invoice.create({ data: { ...note, vatTotal: '20.01', taxInclusive: '120.01' } }))).toBe('RW008');
    await db.invoice.create({ data: note });
  });

  it('corrects an invoice of its job, in its currency', async () => {
    const invoice = await bill(db);
    expect(await refusal(credit(db, invoice, { jobId: null, net: 10 }))).toBe('RW008');
    expect(await refusal(credit(db, invoice, { currency: 'GBP', net: 10 }))).toBe('RW008');
    const note = await credit(db, invoice, { net: 10 });
    expect(await refusal(credit(db, note, { net: 10 }))).toBe('RW008');
    await credit(db, await bill(db, { kind: 'deposit' }));
  });

  it('is not given twice by two at the same moment', async () => {
    const invoice = await bill(db);
    await secondRefused('RW008', [
      (tx) => credit(tx, invoice, { net: 60, series: 'B' }),
      (tx) => credit(tx, invoice, { net: 60, series: 'C' }),
    ]);
  });
});

describe('a payment', () => {
  it('is at most what is due', async () => {
    const invoice = await bill(db);
    expect(await refusal(pay(db, invoice, '120.01'))).toBe('RW009');
    await pay(db, invoice, '100');
    expect(await refusal(pay(db, invoice, '20.01'))).toBe('RW009');
    await credit(db, invoice, { net: 10 });
    expect(await refusal(pay(db, invoice, '8.01'))).toBe('RW009');
    await pay(db, invoice, '8');
  });

  it('goes back as far as it came, also while a credit note leaves too much paid', async () => {
    const invoice = await bill(db);
    expect(await refusal(pay(db, invoice, '-0.01'))).toBe('RW009');
    await pay(db, invoice, '120');
    await credit(db, invoice);
    await pay(db, invoice, '-50');
    expect(await refusal(pay(db, invoice, '0.01'))).toBe('RW009');
    expect(await refusal(pay(db, invoice, '-70.01'))).toBe('RW009');
    await pay(db, invoice, '-70');
  });

  it('goes back without having come where a prepaid invoice is credited', async () => {
    const invoice = await bill(db, { payable: '90' });
    await credit(db, invoice);
    expect(await refusal(pay(db, invoice, '-30.01'))).toBe('RW009');
    await pay(db, invoice, '-30');
  });

  it('is entered on the invoice, never on its credit note', async () => {
    const note = await credit(db, await bill(db));
    expect(await refusal(pay(db, note, '1'))).toBe('RW009');
    expect(await refusal(pay(db, note, '-1'))).toBe('RW009');
  });

  it('is not taken twice by two at the same moment', async () => {
    const invoice = await bill(db);
    await secondRefused('RW009', [(tx) => pay(tx, invoice, '120'), (tx) => pay(tx, invoice, '0.01')]);
  });

  it('and a credit note are judged one after the other', async () => {
    const invoice = await bill(db);
    await secondRefused('RW009', [(tx) => credit(tx, invoice, { series: 'B' }), (tx) => pay(tx, invoice, '120')]);
  });
});

describe('a unit', () => {
  let variantId = '';
  let unitId = '';
  const create = (place?: string) =>
    db.partUnit.create({
      data: { code: randomUUID(), variantId, arrivalReason: 'found', createdAt: NOW, ...(place === undefined ? {} : { place }) },
    });
  const enter = (client: DbClient, kind: string, amountNet: string) =>
    client.unitMoney.create({ data: { unitId, kind, amountNet, at: NOW } });
  const go = async (client: DbClient, ...places: string[]): Promise<void> => {
    for (const [index, to] of places.slice(1).entries())
      await client.unitMove.create({ data: { unitId, from: places[index] ?? '', to, at: NOW, evidence: 'slip 1' } });
  };
  const WAYS: Record<string, string[]> = {
    'called-off': ['expected', 'called-off'],
    'never-came': ['expected', 'never-came'],
    'gone-for-good': ['expected', 'set-aside', 'to-return', 'handed-over', 'gone-for-good'],
    'written-off': ['expected', 'set-aside', 'written-off'],
  };
  beforeEach(async () => {
    variantId = await part();
    unitId = (await create()).id;
  });

  it('begins as expected', async () => {
    expect(await refusal(create('set-aside'))).toBe('RW002');
    expect(await refusal(create('gone-for-good'))).toBe('RW002');
    await create('expected');
  });

  it('has its ends in the way of these tests', () => {
    expect(Object.keys(WAYS).sort()).toEqual([...END_PLACES].sort());
  });

  it.each(Object.entries(WAYS))('that is %s takes in all money of others, and only the loss that closes its account', async (_end, way) => {
    await go(db, ...way);
    expect(await refusal(enter(db, 'loss-accepted', '5'))).toBe('RW003');
    await enter(db, 'charged', '23.40');
    await enter(db, 'credited', '10');
    await enter(db, 'carrier-paid', '3.40');
    expect(await refusal(enter(db, 'loss-accepted', '9.99'))).toBe('RW003');
    expect(await refusal(enter(db, 'loss-accepted', '10.01'))).toBe('RW003');
    await enter(db, 'loss-accepted', '10');
    await enter(db, 'loss-accepted', '-10'); // taken back: open again
    await enter(db, 'credited', '23.40'); // too much: we owe
    expect(await db.unitMoney.count({ where: { unitId } })).toBe(6);
  });

  it('that has not ended may have a part of its loss accepted', async () => {
    await enter(db, 'charged', '23.40');
    await enter(db, 'loss-accepted', '3.40');
    expect(await refusal(go(db, 'expected', 'called-off'))).toBe('RW003');
    await enter(db, 'credited', '20');
    await go(db, 'expected', 'called-off');
  });

  it('does not end past money that is being entered', async () => {
    await secondRefused('RW003', [(tx) => enter(tx, 'charged', '23.40'), (tx) => go(tx, 'expected', 'called-off')]);
  });

  it('that is ending is seen as ended by money that comes meanwhile', async () => {
    await enter(db, 'charged', '23.40');
    await enter(db, 'credited', '23.40');
    await secondRefused('RW003', [(tx) => go(tx, 'expected', 'called-off'), (tx) => enter(tx, 'loss-accepted', '5')]);
  });
});

describe('a yes', () => {
  beforeEach(() => sayYes(db, { jobId: job.jobId, deskId: PERSON }));

  it('keeps its packages, and a package stays on record', async () => {
    expect(await refusal(db.authorisedPackage.deleteMany())).toBe('RW001');
    const next = await db.workPackage.create({ data: { jobId: job.jobId, position: 2, name: 'Hose', grossLow: '20', grossHigh: '30' } });
    expect(await refusal(db.authorisedPackage.updateMany({ data: { packageId: next.id } }))).toBe('RW001');
    expect(await refusal(db.workPackage.delete({ where: { id: next.id } }))).toBe('RW001');
    await db.workPackage.update({ where: { id: next.id }, data: { grossLow: '25' } });
  });
});

describe('what was stated', () => {
  beforeEach(async () => {
    await sayYes(db, { jobId: job.jobId, deskId: PERSON });
    const { vehicleId, jobId } = job;
    await db.vehicleFact.create({
      data: { vehicleId, key: 'capacity', figure: 6.2, unit: 'L', source: 'manual', enteredById: PERSON, enteredAt: NOW },
    });
    await db.fitmentReading.create({ data: { jobId, feature: 'overallHeightMm', figure: 46.5, readById: PERSON, readAt: NOW } });
    const statement = { feature: 'overallHeightMm', figure: 46.5, provenance: 'listing', saidAt: NOW };
    await db.variantStatement.create({ data: { ...statement, variantId: await part() } });
  });

  const run = (sql: string) => refusal(db.$executeRaw(Prisma.raw(sql)));

  it.each([
    ['authorisation', 'ceiling_gross = ceiling_gross + 1'],
    ['authorisation', `said_by = 'somebody else'`],
    ['vehicle_fact', 'figure = figure + 1'],
    ['variant_statement', `provenance = 'measured'`],
    ['fitment_reading', 'figure = figure + 0.001'],
  ])('in %s is not changed by %s', async (table, change) => {
    expect(await run(`update ${table} set ${change}`)).toBe('RW001');
    expect(await run(`update ${table} set ${change}, withdrawn_at = now()`)).toBe('RW001');
  });

  it.each(['authorisation', 'vehicle_fact', 'variant_statement', 'fitment_reading'])(
    'in %s is withdrawn once, and not deleted',
    async (table) => {
      expect(await run(`update ${table} set withdrawn_at = '2026-06-09T09:00:00Z'`)).toBeUndefined();
      expect(await run(`update ${table} set withdrawn_at = now()`)).toBe('RW001');
      expect(await run(`update ${table} set withdrawn_at = null`)).toBe('RW001');
      expect(await run(`delete from ${table}`)).toBe('RW001');
    },
  );
});

describe('a squared job', () => {
  const go = (client: DbClient, from: string, to: string) =>
    client.jobStageChange.create({ data: { jobId: job.jobId, from, to, at: NOW } });
  const owe = (client: DbClient) => client.jobDebt.create({ data: { jobId: job.jobId, kind: 'level-check', openedAt: NOW } });
  beforeEach(async () => {
    await go(db, 'spoken-of', 'expected');
    await go(db, 'expected', 'standing');
    await go(db, 'standing', 'keys-out');
  });

  it('owes nothing', async () => {
    const { id } = await owe(db);
    expect(await refusal(go(db, 'keys-out', 'squared'))).toBe('RW006');
    expect(await db.job.findUniqueOrThrow({ where: { id: job.jobId } })).toMatchObject({ stage: 'keys-out' });
    await db.jobDebt.update({ where: { id }, data: { endedAt: NOW, ending: 'let-go', why: 'moved abroad' } });
    await go(db, 'keys-out', 'squared');
  });

  it('can owe again, and goes back', async () => {
    await go(db, 'keys-out', 'squared');
    await owe(db);
    await go(db, 'squared', 'keys-out');
    expect(await refusal(go(db, 'keys-out', 'squared'))).toBe('RW006');
  });

  it('is not squared past a debt that is being written', async () => {
    await secondRefused('RW006', [owe, (tx) => go(tx, 'keys-out', 'squared')]);
  });

  it('is not squared past a debt that is being opened again', async () => {
    const { id } = await owe(db);
    await db.jobDebt.update({ where: { id }, data: { endedAt: NOW, ending: 'done' } });
    await secondRefused('RW006', [
      (tx) => tx.jobDebt.update({ where: { id }, data: { endedAt: null, ending: null } }),
      (tx) => go(tx, 'keys-out', 'squared'),
    ]);
  });
});

describe('the drum of waste', () => {
  const book = (direction: string, volumeL: string, words: { note?: string; carrier?: string; document?: string } = {}) =>
    refusal(db.wasteEntry.create({ data: { direction, volumeL, at: NOW, byId: PERSON, ...words } }));
  const fetched = { carrier: 'Tideway Carriers', document: 'note 4101' };

  it('is corrected up or down, with a note that says why', async () => {
    expect(await book('correction', '-1.5', { note: 'Read the drum again' })).toBeUndefined();
    expect(await book('correction', '1.5', { note: 'Read the drum again' })).toBeUndefined();
    expect(await book('correction', '-1.5', { note: ' ' })).toBe('waste_entry_litres');
    expect(await book('correction', '0', { note: 'Nothing' })).toBe('waste_entry_litres');
  });

  it('takes in and gives out litres above zero', async () => {
    expect(await book('in', '4.8')).toBeUndefined();
    expect(await book('collected', '60', fetched)).toBeUndefined();
    expect(await book('in', '0')).toBe('waste_entry_litres');
    expect(await book('in', '-4.8', { note: 'Wrong' })).toBe('waste_entry_litres');
    expect(await book('collected', '-60', fetched)).toBe('waste_entry_litres');
    expect(await book('collected', '60', { carrier: 'Tideway Carriers' })).toBe('waste_entry_litres');
    expect(await book('spilt', '1')).toBe('waste_entry_litres');
  });
});
