import { spawn } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { once } from 'node:events';
import os from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { createOwnedDatabase, migrate } from '#libs/db';
import { layOutUnits } from '../support/many-units.ts';
import { startThrowAwayServer } from '../support/throw-away-server.ts';

const UNITS = 200_000;
const ROUNDS = 30;
const WARM_UP = 5;
const PAGES = ['/returns-shelf/money', '/returns-shelf/money/units', '/returns-shelf', '/returns-shelf/documents'];
const PORT = 38_611;

/**
 * Times the owner's page and the shelf on a generated book of 200,000 units, over HTTP on this machine, page and all. The server
 * is the built one: `npm run build` first. Wanted: the owner's page under 100 ms.
 */
export async function run(): Promise<string> {
  const server = await startThrowAwayServer();
  try {
    const owned = await createOwnedDatabase(server.connection, 'many_units');
    await migrate({ connection: owned, schemaPath: path.resolve('prisma/schema.prisma'), dir: path.resolve('prisma/migrations') });
    const started = performance.now();
    const admin = { ...server.connection, database: owned.database };
    await layOutUnits(admin, UNITS);
    const laidOut = `${UNITS} units laid out in ${((performance.now() - started) / 1000).toFixed(0)} s`;
    const cookie = await sessionOf(admin);
    const { user, password, host, port, database } = owned;
    const place = `@localhost:${port}/${database}?host=${encodeURIComponent(host)}`;
    const url = `postgresql://${encodeURIComponent(user)}:${encodeURIComponent(password)}${place}`;
    const child = spawn(process.execPath, ['dist/apps/server/src/main.js'], {
      env: { ...process.env, DATABASE_URL: url, PORT: String(PORT), DEMO: '0' },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const ended = once(child, 'exit');
    try {
      await Promise.race([
        untilReady(),
        ended.then(() => Promise.reject(new Error('The server did not start: build it first (npm run build).'))),
      ]);
      const figures: string[] = [];
      for (const page of PAGES) figures.push(await timed(page, cookie));
      return [`${laidOut}; load of the machine ${os.loadavg()[0]?.toFixed(1) ?? ''}`, ...figures].join('\n');
    } finally {
      child.kill();
      await ended;
    }
  } finally {
    await server.release();
  }
}

async function sessionOf(connection: pg.ClientConfig): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  const client = new pg.Client(connection);
  await client.connect();
  await client.query(
    `insert into session (token_hash, staff_id, csrf_secret, created_at, last_seen_at, expires_at)
     select $1, id, 'secret', now(), now(), now() + interval '1 hour' from staff`,
    [createHash('sha256').update(token).digest('hex')],
  );
  await client.end();
  return `runwarm=${token}`;
}

async function untilReady(): Promise<void> {
  for (let attempt = 0; attempt < 200; attempt += 1) {
    const answer = await fetch(`http://127.0.0.1:${PORT}/api/v1/health`).catch(() => undefined);
    if (answer?.ok === true) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('The server did not start: build it first (npm run build).');
}

async function timed(page: string, cookie: string): Promise<string> {
  const times: number[] = [];
  let bytes = 0;
  for (let round = 0; round < WARM_UP + ROUNDS; round += 1) {
    const started = performance.now();
    const answer = await fetch(`http://127.0.0.1:${PORT}${page}`, { headers: { cookie }, redirect: 'manual' });
    const text = await answer.text();
    if (answer.status !== 200) throw new Error(`${page} answered ${answer.status}`);
    bytes = text.length;
    if (round >= WARM_UP) times.push(performance.now() - started);
  }
  times.sort((a, b) => a - b);
  const at = (share: number): string => (times[Math.floor(ROUNDS * share)] ?? Number.NaN).toFixed(0);
  return `${page}: median ${at(0.5)} ms, nine in ten under ${at(0.9)} ms, ${Math.round(bytes / 1024)} KB`;
}
