import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from '@jest/globals';
import { stopEmbedded } from '#libs/db';

const PATIENCE_MS = 90_000; // a start may build first
let dataDir = '';
let port = 0;
let bootstrap: ChildProcess;
let output = '';

async function freePort(): Promise<number> {
  const server = net.createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port: free } = server.address() as net.AddressInfo;
  server.close();
  return free;
}

async function until(what: string, isTrue: () => Promise<boolean> | boolean): Promise<void> {
  for (const deadline = Date.now() + PATIENCE_MS; !(await isTrue()); await sleep(50)) {
    if (Date.now() > deadline) throw new Error(`Never: ${what}\n${output}`);
  }
}

const answers = (): Promise<boolean> =>
  fetch(`http://127.0.0.1:${port}/api/v1/health`).then(
    ({ status }) => status === 200,
    () => false,
  );
const pidFile = (): string => path.join(dataDir, 'pg/postmaster.pid');
const postmasterPid = (): number => Number(readFileSync(pidFile(), 'utf8').split('\n')[0]);

async function start(): Promise<void> {
  output = '';
  const env = {
    ...process.env,
    NODE_ENV: 'production',
    DATA_DIR: dataDir,
    PORT: String(port),
    HOST: '127.0.0.1',
    DEMO: '0',
    DATABASE_URL: '',
  };
  bootstrap = spawn(process.execPath, ['apps/launch/start.mjs'], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  for (const stream of [bootstrap.stdout, bootstrap.stderr]) stream?.on('data', (text: Buffer) => (output += text.toString()));
  await until('the server answers', answers);
}

beforeEach(async () => {
  dataDir = await mkdtemp(path.join(os.tmpdir(), `runwarm-test-${process.pid}-`));
  await chmod(dataDir, 0o711);
  port = await freePort();
});
afterEach(async () => {
  bootstrap.kill('SIGKILL');
  await until('the server is gone', async () => !(await answers()));
  await stopEmbedded(path.join(dataDir, 'pg'));
  await rm(dataDir, { recursive: true, force: true });
});

test.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)('%s to the bootstrap stops server and database, with exit code 0', async (signal) => {
  await start();
  expect(existsSync(pidFile())).toBe(true);
  bootstrap.kill(signal);
  expect(await once(bootstrap, 'exit')).toEqual([0, null]);
  expect(await answers()).toBe(false);
  expect(existsSync(pidFile())).toBe(false);
});

test('a killed bootstrap takes server and database with it', async () => {
  await start();
  bootstrap.kill('SIGKILL');
  await until('the database stopped', () => !existsSync(pidFile()));
  expect(await answers()).toBe(false);
});

test('a killed server leaves its database to the next start', async () => {
  await start();
  const before = postmasterPid();
  const [serverPid] = readFileSync(`/proc/${bootstrap.pid ?? 0}/task/${bootstrap.pid ?? 0}/children`, 'utf8')
    .split(' ')
    .map(Number);
  process.kill(serverPid ?? 0, 'SIGKILL');
  expect(await once(bootstrap, 'exit')).toEqual([1, null]);
  expect(output).toContain('nothing that was saved is lost');
  await start();
  expect(postmasterPid()).toBe(before);
});
