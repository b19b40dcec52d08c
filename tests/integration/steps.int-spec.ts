import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { STAGE_CORRECTIONS } from '../../apps/server/src/features/job-cards/stage-path.ts';
import { seedDemo } from '../../seed/src/seed-demo.ts';
import { STAGE_MOVES } from '#libs/checklist';
import { type Connection, type Database, drift, Prisma } from '#libs/db';
import { UNIT_MOVES } from '#libs/unit-life';
import { emptyTables, openTestDatabase, refusal } from '../support/database.ts';
import { keepTabletRows } from '../support/tablet-rows.ts';
import { keepTillRows } from '../support/till-rows.ts';
import { keepRunUpRows } from '../support/warm-up-rows.ts';

/** What is added to and never rewritten. Personal values apart from their entry may be erased, and nothing else. */
const KEPT = [
  'audit_entry',
  'audit_seal',
  'cash_up',
  'cash_up_line',
  'cash_up_payment',
  'gauge_look',
  'invoice',
  'invoice_file',
  'invoice_prepayment',
  'job_action',
  'job_stage_change',
  'job_template',
  'payment',
  'photo',
  'proof_sheet',
  'proof_sheet_file',
  'stage_step',
  'supplier_line',
  'tablet_sign_in',
  'unit_money',
  'unit_move',
  'unit_step',
  'warm_up_log',
  'warm_up_withdrawal',
  'waste_entry',
];
const NOW = new Date('2026-06-09T08:00:00Z');

let db: Database;
let connection: Connection;
beforeAll(async () => {
  ({ db, connection } = await openTestDatabase());
  await emptyTables(db);
  await seedDemo(db, { now: NOW, say: () => undefined });
  // What the demo has none of: a printed file, a sealed audit row and a supplier's paper.
  const { id } = await db.invoice.findFirstOrThrow({ select: { id: true } });
  await db.invoiceFile.create({
    data: { invoiceId: id, kind: 'pdf', mediaType: 'application/pdf', bytes: Uint8Array.of(37), sha256: 'not looked at', madeAt: NOW },
  });
  await db.auditEntry.create({
    data: {
      at: NOW,
      action: 'added',
      subject: 'test',
      subjectId: '1',
      personal: { create: { salt: 'salt', values: { name: 'Odile' } } },
      seal: { create: { seq: 1, hash: 'not looked at' } },
    },
  });
  const { id: supplierId } = await db.supplier.findFirstOrThrow();
  const { id: enteredById } = await db.staff.findFirstOrThrow();
  await db.supplierDocument.create({
    data: {
      supplierId,
      kind: 'statement',
      number: 'May',
      datedOn: NOW,
      total: '12.00',
      enteredById,
      enteredAt: NOW,
      lines: { create: { position: 1, amount: '12.00' } },
    },
  });
  await keepRunUpRows(db, NOW);
  await keepTillRows(db, NOW);
  await keepTabletRows(db, NOW);
  // The demo takes seconds to lay out, and a busy machine's patience.
}, 240_000);
afterAll(() => db.$disconnect());

const steps = (moves: readonly { from: string; to: string }[]): string[] => moves.map(({ from, to }) => `${from} > ${to}`).sort();

describe('the steps that the database knows', () => {
  it('are those of the job cards’ stages and of a taken-back tick', async () => {
    const moves = steps(STAGE_MOVES);
    const corrections = steps(STAGE_CORRECTIONS.map(([from, to]) => ({ from, to })));
    expect(steps(await db.stageStep.findMany())).toEqual([...new Set([...moves, ...corrections])].sort());
  });

  it('are those of the units’ places', async () => {
    expect(steps(await db.unitStep.findMany())).toEqual(steps(UNIT_MOVES));
  });

  it('and the tables are those of the schema file', async () => {
    const difference = await drift({
      connection,
      schemaPath: path.resolve('prisma/schema.prisma'),
      dir: path.resolve('prisma/migrations'),
    });
    expect(difference).toMatch(/^(-- This is an empty migration\.)?\s*$/);
  });
});

describe('history', () => {
  it('is kept in these tables', async () => {
    const rows = await db.$queryRaw<{ name: string }[]>`select distinct event_object_table::text as name from information_schema.triggers
      where action_statement like '%refuse_change%' and event_manipulation = 'DELETE' order by 1`;
    expect(rows.map(({ name }) => name)).toEqual(KEPT);
  });

  it.each(KEPT)('of %s cannot be rewritten or deleted', async (table) => {
    const [column] = await db.$queryRaw<[{ name: string }]>`select column_name::text as name from information_schema.columns
      where table_schema = 'public' and table_name = ${table} order by ordinal_position limit 1`;
    const one = Prisma.raw(`where ctid = (select ctid from "${table}" limit 1)`);
    const name = Prisma.raw(`"${column.name}"`);
    const from = Prisma.raw(`"${table}"`);
    expect(await db.$queryRaw(Prisma.sql`select 1 from ${from} limit 1`)).toHaveLength(1);
    expect(await refusal(db.$executeRaw(Prisma.sql`update ${from} set ${name} = ${name} ${one}`))).toBe('RW001');
    expect(await refusal(db.$executeRaw(Prisma.sql`delete from ${from} ${one}`))).toBe('RW001');
  });

  it('of personal values may be erased, not rewritten', async () => {
    expect(await refusal(db.$executeRaw`update audit_personal set salt = 'other'`)).toBe('RW001');
    expect(await db.auditPersonal.deleteMany()).toEqual({ count: 1 });
  });
});

describe('a job’s stage', () => {
  const change = (jobId: string, from: string, to: string) => db.jobStageChange.create({ data: { jobId, from, to, at: NOW } });
  let jobId = '';
  beforeAll(async () => {
    jobId = (await db.job.findFirstOrThrow({ where: { stage: 'spoken-of' } })).id;
  });

  it('is not set by hand', async () => {
    expect(await refusal(db.job.update({ where: { id: jobId }, data: { stage: 'keys-out' } }))).toBe('RW002');
  });

  it('takes no unknown step and none from where it is not', async () => {
    expect(await refusal(change(jobId, 'spoken-of', 'keys-out'))).toBe('job_stage_change_from_to_fkey');
    expect(await refusal(change(jobId, 'expected', 'standing'))).toBe('RW002');
  });

  it('starts as spoken of', async () => {
    const { id: _, number: __, ...copy } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    expect(await refusal(db.job.create({ data: { ...copy, stage: 'settled' } }))).toBe('RW002');
  });

  it('is moved once by two who move it at the same moment', async () => {
    const outcomes = await Promise.allSettled([change(jobId, 'spoken-of', 'expected'), change(jobId, 'spoken-of', 'expected')]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await db.job.findUniqueOrThrow({ where: { id: jobId } })).toMatchObject({ stage: 'expected' });
    expect(await db.jobStageChange.count({ where: { jobId, from: 'spoken-of' } })).toBe(1);
  });
});

describe('a unit’s place', () => {
  const move = (unitId: string, from: string, to: string, evidence = '') =>
    db.unitMove.create({ data: { unitId, from, to, at: NOW, evidence } });
  const charge = (unitId: string, amountNet: string, reference: string) =>
    db.unitMoney.create({ data: { unitId, kind: 'charged', amountNet, at: NOW, reference } });
  let unitId = '';
  beforeEach(async () => {
    const { id: variantId } = await db.partVariant.findFirstOrThrow();
    const unit = await db.partUnit.create({ data: { code: randomUUID(), variantId, arrivalReason: 'found', createdAt: NOW } });
    unitId = unit.id;
  });

  it('is not set by hand, and takes no unknown step', async () => {
    expect(await refusal(db.partUnit.update({ where: { id: unitId }, data: { place: 'fitted' } }))).toBe('RW002');
    expect(await refusal(move(unitId, 'expected', 'fitted'))).toBe('unit_move_from_to_fkey');
    expect(await refusal(move(unitId, 'set-aside', 'fitted'))).toBe('RW002');
  });

  it('is no end while money is open', async () => {
    await charge(unitId, '38.40', 'I-1');
    expect(await refusal(move(unitId, 'expected', 'called-off'))).toBe('RW003');
    await db.unitMoney.create({ data: { unitId, kind: 'credited', amountNet: '38.40', at: NOW } });
    await move(unitId, 'expected', 'called-off');
    expect(await db.partUnit.findUniqueOrThrow({ where: { id: unitId } })).toMatchObject({ place: 'called-off' });
  });

  it('is handed over only with evidence', async () => {
    await move(unitId, 'expected', 'set-aside');
    await move(unitId, 'set-aside', 'to-return');
    expect(await refusal(move(unitId, 'to-return', 'handed-over', ' '))).toBe('RW005');
    await move(unitId, 'to-return', 'handed-over', 'tracking 1Z-77');
  });

  it('is charged once by one supplier invoice', async () => {
    await charge(unitId, '38.40', 'I-2');
    expect(await refusal(charge(unitId, '38.40', 'I-2'))).toBe('unit_money_one_charge');
    await charge(unitId, '-38.40', 'I-2'); // the counter-entry
  });
});

describe('the plan of the bays', () => {
  const at = (time: string): Date => new Date(`2027-03-01T${time}Z`);
  let jobId = '';
  let placeId = '';
  let otherPlaceId = '';
  let staffId = '';
  const book = (from: string, to: string, change: { placeId?: string; staffId?: string; calledOffAt?: Date } = {}) =>
    db.booking.create({ data: { jobId, placeId, phase: 'opening', startsAt: at(from), endsAt: at(to), ...change } });
  beforeAll(async () => {
    jobId = (await db.job.findFirstOrThrow()).id;
    staffId = (await db.staff.findFirstOrThrow({ where: { role: 'technician' } })).id;
    [placeId = '', otherPlaceId = ''] = (await db.place.findMany({ orderBy: { position: 'asc' } })).map(({ id }) => id);
  });
  beforeEach(() => db.booking.deleteMany({ where: { startsAt: { gte: at('00:00') } } }));

  it('has one job at a time in a place', async () => {
    await book('09:00', '10:00');
    await book('10:00', '11:00');
    expect(await refusal(book('09:59', '10:01'))).toBe('booking_place_no_overlap');
    await book('09:59', '10:01', { placeId: otherPlaceId });
  });

  it('has one person in one place at a time', async () => {
    await book('09:00', '10:00', { staffId });
    expect(await refusal(book('09:30', '09:45', { staffId, placeId: otherPlaceId }))).toBe('booking_hands_no_overlap');
    await book('10:00', '10:30', { staffId, placeId: otherPlaceId });
  });

  it('frees what was called off, and takes no time backwards', async () => {
    await book('09:00', '10:00', { calledOffAt: NOW });
    await book('09:00', '10:00');
    // The range itself refuses it before the check is read.
    expect(await refusal(book('12:00', '11:00'))).toMatch(/22000|booking_ends_after_start/);
    expect(await refusal(book('12:00', '12:00'))).toBe('booking_ends_after_start');
  });

  it('gives a place to one of many who ask at the same moment', async () => {
    const outcomes = await Promise.allSettled(Array.from({ length: 6 }, (_, index) => book('13:00', `14:0${index}`)));
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  });
});
