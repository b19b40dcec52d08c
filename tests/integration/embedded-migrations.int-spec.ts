import { cp, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from '@jest/globals';
import pg from 'pg';
import { type Connection, createOwnedDatabase, drift, migrate, migrationsHash, nextMigration } from '#libs/db';
import { serverConnection } from '../support/database.ts';

const schemaPath = path.resolve('prisma/schema.prisma');
const shipped = path.resolve('prisma/migrations');
let dir = '';
let connection: Connection;
let database = '';

async function ask(sql: string, on: Connection = connection): Promise<unknown[]> {
  const client = new pg.Client(on);
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows.map((row) => Object.values(row)[0]);
  } finally {
    await client.end();
  }
}

async function addMigration(name: string, sql: string): Promise<void> {
  await mkdir(path.join(dir, name), { recursive: true });
  await writeFile(path.join(dir, name, 'migration.sql'), sql);
}

const run = (): Promise<string[]> => migrate({ connection, schemaPath, dir });

beforeEach(async () => {
  dir = await mkdtemp(path.join(os.tmpdir(), 'runwarm-migrations-'));
  database = `migrations_${process.env['JEST_WORKER_ID'] ?? '1'}`;
  connection = await createOwnedDatabase(serverConnection(), database);
});
afterEach(async () => {
  await ask(`drop database "${database}" with (force)`, serverConnection());
  await rm(dir, { recursive: true });
});

describe('the shipped migrations', () => {
  beforeEach(() => cp(shipped, dir, { recursive: true }));

  test('are applied in order, once', async () => {
    const names = (await readdir(shipped)).filter((name) => /^\d/.test(name)).sort();
    expect(names.length).toBeGreaterThan(0);
    expect(await run()).toEqual(names);
    expect(await run()).toEqual([]);
  });

  test('are applied once by two processes at the same moment', async () => {
    const [a, b] = await Promise.all([run(), run()]);
    expect([a.length, b.length].sort()).toEqual([0, Math.max(a.length, b.length)]);
    expect(Math.max(a.length, b.length)).toBeGreaterThan(0);
  });

  test('lead to the schema file', async () => {
    await run();
    expect(await drift({ connection, schemaPath, dir })).toMatch(/^(-- This is an empty migration\.)?\s*$/);
    expect(await nextMigration({ connection: serverConnection(), schemaPath, dir })).toMatch(/^(-- This is an empty migration\.)?\s*$/);
  });

  test('differ from a database that was changed by hand', async () => {
    await run();
    const [table] = await ask(`select min(tablename) from pg_tables where schemaname = 'public' and tablename <> '_prisma_migrations'`);
    await ask(`alter table "${String(table)}" add column "by_hand" integer`);
    expect(await drift({ connection, schemaPath, dir })).toContain('DROP COLUMN "by_hand"');
  });
});

describe('a migration', () => {
  test('that fails leaves nothing behind and is tried again', async () => {
    await addMigration('20260101000000_first', 'create table kept (n integer); insert into kept values (7);');
    await addMigration('20260102000000_second', 'create table half (n integer); select 1 / 0;');
    await expect(run()).rejects.toThrow(
      'Migration 20260102000000_second could not be applied, and nothing of it was kept: division by zero',
    );
    expect(await ask('select n from kept')).toEqual([7]);
    expect(await ask(`select to_regclass('half')::text`)).toEqual([null]);

    await addMigration('20260102000000_second', 'create table half (n integer);');
    expect(await run()).toEqual(['20260102000000_second']);
    expect(await ask('select n from kept')).toEqual([7]);
  });

  test('may hold functions with semicolons', async () => {
    await addMigration('20260101000000_first', `create function seven() returns integer language plpgsql as $$ begin return 7; end $$;`);
    await run();
    expect(await ask('select seven()')).toEqual([7]);
  });

  test('of a newer release is not run over', async () => {
    await addMigration('20260101000000_first', 'create table kept (n integer);');
    await addMigration('20270101000000_newer', 'create table newer (n integer);');
    await run();
    await rm(path.join(dir, '20270101000000_newer'), { recursive: true });
    await expect(run()).rejects.toThrow(/made by a newer release \(20270101000000_newer\)/);
  });

  test('changes the hash that names the template database', async () => {
    await addMigration('20260101000000_first', 'select 1;');
    const before = migrationsHash(dir);
    expect(migrationsHash(dir)).toBe(before);
    await addMigration('20260101000000_first', 'select 2;');
    expect(migrationsHash(dir)).not.toBe(before);
  });
});
