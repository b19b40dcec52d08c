import { createHash, randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { AuditChain } from '../../apps/server/src/platform/audit-chain.ts';
import { Audit } from '../../apps/server/src/platform/audit.ts';
import { canonicalJson } from '../../apps/server/src/platform/canonical-json.ts';
import { PrismaService } from '../../apps/server/src/platform/database.ts';
import { requestContext, type RequestKey } from '../../apps/server/src/platform/request-context.ts';
import { Rounds } from '../../apps/server/src/platform/rounds.ts';
import { UnitOfWork } from '../../apps/server/src/platform/unit-of-work.ts';
import { type Connection, type Database } from '#libs/db';
import { emptyTables, serverConnection, testConnection } from '../support/database.ts';
import { TestClock } from '../support/test-clock.ts';

let connection: Connection;
let prisma: PrismaService;
let other: PrismaService;
let db: Database;
const clock = new TestClock();
const audit = new Audit(clock);

beforeAll(async () => {
  connection = await testConnection();
  prisma = new PrismaService(connection);
  other = new PrismaService(connection); // as another process of the same workshop
  db = prisma.db;
});
beforeEach(() => emptyTables(db));
afterAll(async () => {
  await prisma.onApplicationShutdown();
  await other.onApplicationShutdown();
});

/** With the triggers that keep history put aside, as only the server's superuser can. */
async function tamper(sql: string): Promise<number> {
  const client = new pg.Client({ ...serverConnection(), database: connection.database ?? '' });
  await client.connect();
  try {
    await client.query('set session_replication_role = replica');
    return (await client.query(sql)).rowCount ?? 0;
  } finally {
    await client.end();
  }
}

describe('the audit chain', () => {
  let chain: AuditChain;
  beforeEach(() => {
    chain = new AuditChain(prisma, new Rounds(false));
  });

  const record = (count: number, personal = false): Promise<unknown> =>
    db.$transaction(async (tx) => {
      for (let index = 1; index <= count; index += 1) {
        await audit.record(tx, {
          action: 'changed',
          subject: 'customer',
          subjectId: String(index),
          before: { phone: '0555 0100', at: index },
          after: { phone: '0555 0142', at: index },
          ...(personal ? { personal: { name: `Person ${index}` } } : {}),
        });
      }
    });

  it('covers every row, in order, and says what it does not cover yet', async () => {
    await record(3);
    expect(await chain.verify()).toEqual({ sealed: 0, unsealed: 3, brokenAt: null });
    expect(await chain.seal()).toBe(3);
    expect(await chain.seal()).toBe(0);
    await record(1);
    expect(await chain.verify()).toEqual({ sealed: 3, unsealed: 1, brokenAt: null });
    await chain.seal();
    expect((await db.auditSeal.findMany({ orderBy: { seq: 'asc' } })).map(({ seq, entryId }) => [seq, entryId])).toEqual(
      (await db.auditEntry.findMany({ orderBy: { id: 'asc' } })).map(({ id }, index) => [BigInt(index + 1), id]),
    );
  });

  it('walks further than one page of rows', async () => {
    await db.auditEntry.createMany({
      data: Array.from({ length: 1_101 }, (_, index) => ({ at: clock.now(), action: 'added', subject: 'row', subjectId: String(index) })),
    });
    expect([await chain.seal(), await chain.seal(), await chain.seal(), await chain.seal()]).toEqual([500, 500, 101, 0]);
    expect(await chain.verify()).toEqual({ sealed: 1_101, unsealed: 0, brokenAt: null });
  });

  it.each([
    ['a changed value', `update audit_entry set after = jsonb_set(after, '{phone}', '"0555 0199"') where id = 2`, 2n],
    ['a changed hour', `update audit_entry set at = at + interval '1 hour' where id = 2`, 2n],
    ['another person', `update audit_entry set staff_id = '${randomUUID()}' where id = 3`, 3n],
    ['another personal hash', `update audit_entry set personal_hash = 'f00' where id = 1`, 1n],
    ['a changed seal', `update audit_seal set hash = 'f00' where entry_id = 2`, 2n],
    [
      'two rows that changed places',
      `update audit_entry e set after = o.after from audit_entry o where o.id = 5 - e.id and e.id in (2, 3)`,
      2n,
    ],
  ])('shows %s', async (_what, sql, brokenAt) => {
    await record(4, true);
    await chain.seal();
    expect(await tamper(sql)).toBeGreaterThan(0);
    expect(await chain.verify()).toMatchObject({ brokenAt, unsealed: 0 });
  });

  it('shows a row that was taken out with its seal', async () => {
    await record(4);
    await chain.seal();
    await tamper('delete from audit_seal where entry_id = 2');
    await tamper('delete from audit_entry where id = 2');
    expect(await chain.verify()).toMatchObject({ sealed: 1, brokenAt: 3n });
  });

  it('shows a row slipped in as unsealed, never as sealed', async () => {
    await record(2);
    await chain.seal();
    await tamper(`insert into audit_entry (id, at, action, subject, subject_id) values (0, now(), 'added', 'slip', '1')`);
    expect(await chain.verify()).toEqual({ sealed: 2, unsealed: 1, brokenAt: null });
  });

  it('stays whole when personal values are erased, and proves those that are kept', async () => {
    await record(2, true);
    await chain.seal();
    const { entry, salt, values } = await db.auditPersonal.findFirstOrThrow({ include: { entry: true }, orderBy: { entryId: 'asc' } });
    const hash = createHash('sha256')
      .update(salt + canonicalJson(values))
      .digest('hex');
    expect(entry.personalHash).toBe(hash);
    expect(JSON.stringify(await db.auditEntry.findMany({ select: { before: true, after: true } }))).not.toContain('Person');
    await db.auditPersonal.deleteMany();
    expect(await chain.verify()).toEqual({ sealed: 2, unsealed: 0, brokenAt: null });
  });

  it('takes up a row that was committed after its followers were sealed', async () => {
    let finish: () => void = () => undefined;
    const waiting = new Promise<void>((resolve) => (finish = resolve));
    let begun: () => void = () => undefined;
    const isBegun = new Promise<void>((resolve) => (begun = resolve));
    const slow = db.$transaction(
      async (tx) => {
        await audit.record(tx, { action: 'added', subject: 'slow', subjectId: '1' });
        begun();
        await waiting;
      },
      { timeout: 10_000 },
    );
    await isBegun;
    await record(2);
    expect(await chain.seal()).toBe(2);
    finish();
    await slow;
    expect(await chain.seal()).toBe(1);
    expect(await chain.verify()).toEqual({ sealed: 3, unsealed: 0, brokenAt: null });
  });

  it('is made once by several sealers at the same moment', async () => {
    await record(40);
    const second = new AuditChain(other, new Rounds(false));
    const counts = await Promise.all([chain.seal(), second.seal(), chain.seal(), second.seal()]);
    expect(counts.reduce((sum, count) => sum + count)).toBe(40);
    expect(await second.verify()).toEqual({ sealed: 40, unsealed: 0, brokenAt: null });
  });
});

describe('a unit of work', () => {
  const keyed = (change: Partial<RequestKey> = {}): RequestKey => ({
    scope: 'person 1',
    key: randomUUID(),
    route: 'POST /customers',
    bodyHash: 'hash',
    ...change,
  });
  const as = <T>(requestKey: RequestKey | undefined, work: () => Promise<T>): Promise<T> =>
    requestContext.run({ staff: undefined, requestKey }, work);
  let here: UnitOfWork;
  let there: UnitOfWork;
  beforeEach(() => {
    here = new UnitOfWork(prisma, clock);
    there = new UnitOfWork(other, clock);
  });
  const add = (unit: UnitOfWork, name = 'Odile'): Promise<{ id: string }> =>
    unit.run(async (tx) => ({ id: (await tx.customer.create({ data: { name } })).id }));

  it('happens once for one key, however many ask at the same moment on two processes', async () => {
    const key = keyed();
    const results = await Promise.all(Array.from({ length: 8 }, (_, index) => as(key, () => add(index % 2 ? here : there))));
    expect(await db.customer.count()).toBe(1);
    const { id } = await db.customer.findFirstOrThrow();
    expect(results).toEqual(Array.from({ length: 8 }, () => ({ id })));
  });

  it('happens for each without a key, and for each person with the same key', async () => {
    const key = keyed();
    await as(undefined, () => add(here));
    await as(undefined, () => add(here));
    await as(key, () => add(here));
    await as({ ...key, scope: 'person 2' }, () => add(here));
    expect(await db.customer.count()).toBe(4);
  });

  it('answers a repeat with the same, also where there was nothing to say', async () => {
    const key = keyed();
    const work = () =>
      here.run(async (tx) => {
        await tx.customer.create({ data: { name: 'Odile' } });
        return null;
      });
    expect(await as(key, work)).toBeNull();
    expect(await as(key, work)).toBeNull();
    expect(await db.customer.count()).toBe(1);
  });

  it.each([
    ['other values', { bodyHash: 'other' }],
    ['another place', { route: 'POST /vehicles' }],
  ])('refuses its key with %s', async (_what, change) => {
    const key = keyed();
    await as(key, () => add(here));
    await expect(as({ ...key, ...change }, () => add(here))).rejects.toMatchObject({ kind: 'impossible', code: 'key-used' });
    expect(await db.customer.count()).toBe(1);
  });

  it('leaves nothing behind when it fails, not even its key', async () => {
    const key = keyed();
    const failing = () =>
      here.run(async (tx) => {
        await tx.customer.create({ data: { name: 'Odile' } });
        throw new Error('half way');
      });
    await expect(as(key, failing)).rejects.toThrow('half way');
    expect(await db.customer.count()).toBe(0);
    expect(await db.idempotencyKey.count()).toBe(0);
    await as({ ...key, bodyHash: 'corrected' }, () => add(here));
    expect(await db.customer.count()).toBe(1);
  });

  it('is tried again when two block one another', async () => {
    const [a, b] = [await add(here, 'a'), await add(here, 'b')];
    let attempts = 0;
    const inOrder = (unit: UnitOfWork, first: string, second: string): Promise<null> =>
      unit.run(async (tx) => {
        attempts += 1;
        for (const id of [first, second]) {
          await tx.customer.update({ where: { id }, data: { version: { increment: 1 } } });
          if (attempts <= 2) await new Promise((resolve) => setTimeout(resolve, 150));
        }
        return null;
      });
    await Promise.all([as(keyed(), () => inOrder(here, a.id, b.id)), as(keyed(), () => inOrder(there, b.id, a.id))]);
    expect((await db.customer.findMany()).map(({ version }) => version)).toEqual([3, 3]);
    expect(attempts).toBeGreaterThanOrEqual(3);
  });
});
