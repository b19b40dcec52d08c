import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import readline from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from '@jest/globals';
import pg from 'pg';
import { type Connection, openDatabaseServer, startEmbedded, stopEmbedded } from '#libs/db';
import { bundleTypeScript } from '../../apps/launch/bundle.mjs';

let program = '';
let base = '';
let dir = '';
const children = new Set<ChildProcessWithoutNullStreams>();

interface Owner {
  process: ChildProcessWithoutNullStreams;
  adopted: boolean;
  connection: Connection;
  /** Lets it release the server. */
  finish: () => Promise<string>;
}

/** A process of its own that uses the server, so that it can be killed. */
async function startOwner(): Promise<Owner> {
  const child = spawn(process.execPath, [program, dir]);
  children.add(child);
  let problem = '';
  child.stderr.on('data', (text: Buffer) => (problem += text.toString()));
  const lines = readline.createInterface(child.stdout)[Symbol.asyncIterator]();
  const next = async <T>(): Promise<T> => {
    const line = await lines.next();
    if (line.done === true) throw new Error(`The owner ended: ${problem}`);
    return JSON.parse(line.value) as T;
  };
  const started = await next<{ adopted: boolean; connection: Connection }>();
  const finish = async (): Promise<string> => {
    child.stdin.end();
    return (await next<{ released: string }>()).released;
  };
  return { process: child, ...started, finish };
}

async function killHard(owner: Owner): Promise<void> {
  owner.process.kill('SIGKILL');
  await once(owner.process, 'exit');
}

const pidFile = (): string => path.join(dir, 'postmaster.pid');
const postmasterPid = (): number => Number(readFileSync(pidFile(), 'utf8').split('\n')[0]);

/** A dead process may stay as a zombie until it is reaped; it holds nothing any more. */
function lives(pid: number): boolean {
  const stat = existsSync(`/proc/${pid}/stat`) ? readFileSync(`/proc/${pid}/stat`, 'utf8') : '';
  return stat !== '' && !/\) [ZX] /.test(stat);
}

async function ask(connection: Connection, sql: string): Promise<unknown[]> {
  const client = new pg.Client(connection);
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows.map((row) => Object.values(row)[0]);
  } finally {
    await client.end();
  }
}

beforeAll(async () => {
  program = await bundleTypeScript('embedded-owner', `import './tests/support/embedded-owner.ts';`);
});
beforeEach(async () => {
  base = await mkdtemp(path.join(os.tmpdir(), `runwarm-test-${process.pid}-`));
  await chmod(base, 0o711);
  dir = path.join(base, 'pg');
});
afterEach(async () => {
  for (const child of children) child.kill('SIGKILL');
  children.clear();
  await stopEmbedded(dir);
  await rm(base, { recursive: true, force: true });
});
afterAll(() => rm(program, { force: true }));

describe('the embedded server', () => {
  test('starts, keeps data over a stop, and leaves no process', async () => {
    const first = await startEmbedded({ dir });
    expect(first.adopted).toBe(false);
    await ask(first.connection, 'create table kept as select 7 as n');
    const pid = postmasterPid();
    expect(lives(pid)).toBe(true);
    expect(await first.release()).toBe('stopped');
    expect(lives(pid)).toBe(false);
    expect(existsSync(pidFile())).toBe(false);

    const second = await startEmbedded({ dir });
    expect(await ask(second.connection, 'select n from kept')).toEqual([7]);
    await second.release();
  });

  test('listens on no port', async () => {
    const server = await startEmbedded({ dir });
    expect(await ask(server.connection, 'show listen_addresses')).toEqual(['']);
    await server.release();
  });

  test('lives on when its process is killed, and the next start takes it over', async () => {
    const owner = await startOwner();
    const pid = postmasterPid();
    await killHard(owner);
    expect(lives(pid)).toBe(true);

    const next = await startEmbedded({ dir });
    expect(next.adopted).toBe(true);
    expect(postmasterPid()).toBe(pid);
    expect(await next.release()).toBe('stopped');
    expect(lives(pid)).toBe(false);
  });

  test('is stopped by the last of two users', async () => {
    const a = await startOwner();
    const b = await startOwner();
    expect([a.adopted, b.adopted]).toEqual([false, true]);
    expect(await a.finish()).toBe('still-used');
    expect(await ask(b.connection, 'select 1')).toEqual([1]);
    expect(await b.finish()).toBe('stopped');
    expect(existsSync(pidFile())).toBe(false);
  });

  test('is created once by two first starts at the same moment', async () => {
    const [a, b] = await Promise.all([startOwner(), startOwner()]);
    expect(a.connection).toEqual(b.connection);
    expect([await a.finish(), await b.finish()].sort()).toEqual(['still-used', 'stopped']);
  });

  test('is used again after the owner lost its connection, and still stops', async () => {
    const server = await startEmbedded({ dir });
    const owners = `select pid from pg_stat_activity where application_name = 'runwarm-owner'`;
    const [before] = await ask(server.connection, owners);
    await ask(server.connection, `select pg_terminate_backend(${Number(before)})`);
    let after: unknown;
    for (let i = 0; i < 50 && (after === undefined || after === before); i += 1) {
      await sleep(100);
      [after] = await ask(server.connection, owners);
    }
    expect(after).not.toBe(before);
    expect(after).toBeDefined();
    expect(await server.release()).toBe('stopped');
  });

  test('starts after a crash of the server itself', async () => {
    const owner = await startOwner();
    await ask(owner.connection, 'create table kept as select 7 as n');
    await killHard(owner);
    const pid = postmasterPid();
    process.kill(pid, 'SIGKILL'); // stays a zombie where no init reaps it, and its number stays in postmaster.pid
    const next = await startEmbedded({ dir });
    expect(next.adopted).toBe(false);
    expect(await ask(next.connection, 'select n from kept')).toEqual([7]);
    await next.release();
  });

  test('starts when another program has the number in a stale pid file', async () => {
    const first = await startEmbedded({ dir });
    const text = readFileSync(pidFile(), 'utf8');
    await first.release();
    await writeFile(pidFile(), text.replace(/^\d+/, String(process.pid)));
    const next = await startEmbedded({ dir });
    expect(next.adopted).toBe(false);
    expect(postmasterPid()).not.toBe(process.pid);
    await next.release();
  });

  test('puts its socket elsewhere when the path would be too long', async () => {
    dir = path.join(base, 'a-long-name-of-a-directory'.repeat(4), 'pg');
    const server = await startEmbedded({ dir });
    expect(server.connection.host.length).toBeLessThan(90);
    expect(await ask(server.connection, 'select 1')).toEqual([1]);
    await server.release();
    expect(existsSync(server.connection.host)).toBe(false);
  });

  test('refuses a directory that holds something else', async () => {
    await mkdir(dir);
    await writeFile(path.join(dir, 'letter.txt'), 'not a database');
    await expect(startEmbedded({ dir })).rejects.toThrow(/is not empty and holds no database/);
  });
});

describe("the application's database", () => {
  test('belongs to an ordinary role, and is kept', async () => {
    const first = await openDatabaseServer({ dataDir: base });
    expect(first.kind).toBe('embedded');
    expect(await ask(first.connection, `select rolsuper from pg_roles where rolname = current_user`)).toEqual([false]);
    await ask(first.connection, 'create table kept as select 7 as n');
    await first.release();
    const second = await openDatabaseServer({ dataDir: base });
    expect(await ask(second.connection, 'select n from kept')).toEqual([7]);
    await second.release();
  });

  test('is reached by an address too, with a clear message where it is not', async () => {
    const embedded = await openDatabaseServer({ dataDir: base });
    const { host, password } = embedded.connection;
    const url = (database: string, pw = password): string => `postgresql://runwarm:${pw}@/${database}?host=${encodeURIComponent(host)}`;
    const external = await openDatabaseServer({ dataDir: base, databaseUrl: url('runwarm').replace('@/', '@localhost/') });
    expect(external.kind).toBe('external');
    expect(await ask(external.connection, 'select current_database()')).toEqual(['runwarm']);
    expect(await external.release()).toBe('external');
    const open = (databaseUrl: string): Promise<unknown> => openDatabaseServer({ dataDir: base, databaseUrl });
    await expect(open(url('other').replace('@/', '@localhost/'))).rejects.toThrow(/has no database of that name: create it/);
    await expect(open(url('runwarm', 'wrong').replace('@/', '@localhost/'))).rejects.toThrow(/refuses that user or password/);
    await expect(open('postgresql://runwarm:x@127.0.0.1:1/runwarm')).rejects.toThrow(/no PostgreSQL answers there/);
    await embedded.release();
  });
});
